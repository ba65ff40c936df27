package jargon_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/index"
)

// What a word stands for is a name of the catalogue, or it would be dead; and a word for
// a kind is itself no name, or it would be read as that without a word said.
func TestWordsStandForNames(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	b := naming.NewResolver(x)
	for table, words := range jargon.Tables() {
		for w, means := range words {
			_, _, ok := b.Named(means)
			assert.True(t, ok || len(jargon.AskVolume(means)) > 1, "%s: %q means %q, which is nothing", table, w, means)
			if p, _, named := b.Named(w); named && table == "usual" {
				assert.Fail(t, "a name already", "%s: %q for %q is %s", table, w, means, p.Name)
			}
		}
	}
}
