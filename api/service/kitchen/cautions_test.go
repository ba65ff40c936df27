package kitchen

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data"
)

// What a drink is said to do to a guest depends on whether it holds alcohol: the
// lines of alcohol in general go with alcohol only, and what concerns a child or a
// pregnant guest with drinks that these may have. Up to 0.5 % vol is none.
func TestCautionsDependOnAlcohol(t *testing.T) {
	k := testKitchen(t)
	for _, x := range []struct {
		text    string
		alcohol bool
	}{
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz honey syrup\n1 egg white\nshake, up", true},
		{"3 oz water\n1 oz lemon juice\n3/4 oz honey syrup\n1 egg white\nshake, up", false},
		{"4 oz ginger beer\n1 oz lemon juice\n1/4 oz honey syrup\n1 egg white\nshake, up", false},
		{"4 oz tonic water\n1 oz lemon juice\n1/4 oz honey syrup\n2 dashes aromatic bitters\n1 egg white\nshake, up", true},
	} {
		spec := readDraft(t, k, x.text)
		assert.Equal(t, x.alcohol, HoldsAlcohol(&spec), x.text)
		all := k.AllCautions(&spec)
		assert.Equal(t, x.alcohol, slices.ContainsFunc(all, func(c data.Caution) bool { return IsGeneralCaution(c.Key) }), x.text)
		said := map[string]string{}
		for _, c := range all {
			said[c.Key] = c.Text
		}
		assert.Equal(t, !x.alcohol, strings.Contains(said["raw egg"], "pregnant"), x.text)
		assert.Equal(t, !x.alcohol, strings.Contains(said["honey"], "infant"), x.text)
		assert.NotEmpty(t, said["honey"], x.text)
	}
}
