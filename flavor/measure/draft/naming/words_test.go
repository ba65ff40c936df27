package naming_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/naming"
)

// What a word stands for is a name of the catalogue, or it would be dead; and a word for
// a kind is itself no name, or it would be read as that without a word said.
func TestWordsStandForNames(t *testing.T) {
	b := catalogue(t)
	for table, words := range naming.Tables {
		for w, means := range words {
			_, _, ok := b.Named(means)
			assert.True(t, ok || naming.Asks(means), "%s: %q means %q, which is nothing", table, w, means)
			if p, _, named := b.Named(w); named && table == "usual" {
				assert.Fail(t, "a name already", "%s: %q for %q is %s", table, w, means, p.Name)
			}
		}
	}
}
