package jargon

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/carrier"
)

// A word that is passed over carries no allergen and comes from no animal, and says one thing of a bottle.
func TestEpithetsCarryNothing(t *testing.T) {
	kinds := map[string]Epithet{}
	for _, kind := range Epithets {
		for w := range strings.FieldsSeq(epithetWords[kind]) {
			c := carrier.Of(strings.ReplaceAll(w, "-", " "))
			assert.Empty(t, c.Marks, w)
			assert.Empty(t, c.Animal, w)
			assert.Zero(t, kinds[w], "%s says two things", w)
			kinds[w] = kind
			assert.Equal(t, kind, EpithetOf(w), w)
		}
	}
	assert.Equal(t, NoEpithet, EpithetOf("hazelnut"))
}
