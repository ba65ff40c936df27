package reading

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/dressing"
)

// ofDrafts are words and signs that drafts are made of.
var ofDrafts = []string{"2", "1.5", "30", "oz", "ml", "London dry gin", "gin", "lemon juice", "sweet vermouth", "simple", "mint", "shake", "stir", "up", "rocks", "umeboshi", ",", "/", "\n", ":", "Sam", "top", "dash", "bitters", "egg white"}

// What the rules read without a fault is read as they read it, or is asked about: a word that may
// be the name of the drink or a pour of it, and what the text says that the pours belie. Either way
// no other pours are made of it.
func TestWhatTheRulesReadIsReadSo(t *testing.T) {
	shelf := drafttest.Bar()
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(ofDrafts), 2, 16).Draw(t, "words"), " ")
		rules, err := byRules(draft.Parse(text), shelf)
		require.NoError(t, err)
		if len(rules.Faults) > 0 {
			return
		}
		r, err := Resolve(draft.Parse(text), shelf)
		require.NoError(t, err)
		for _, f := range r.Faults {
			assert.ErrorIs(t, f, flavor.ErrInvalid, text)
		}
		r.Faults = nil
		rules.Spec.Dressings, rules.Spec.Dressed = r.Spec.Dressings, r.Spec.Dressed // looked up when all is read
		rules.Spec.Notes = append(rules.Spec.Notes, dressing.Notes(&r.Spec)...)     // and told then
		assert.Equal(t, rules, r, text)
	})
}

// A draft of pours alone, as the parts of a recipe are, is left to the rules.
func TestPoursAloneAreLeftToTheRules(t *testing.T) {
	r, err := Resolve(draft.ParsePours("Sam: 1.5gin ok so its"), drafttest.Bar())
	require.NoError(t, err)
	assert.Error(t, r.Err())
}
