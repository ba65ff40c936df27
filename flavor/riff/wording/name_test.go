package wording_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/wording"
)

// A name is in the form of the trade, tells nothing twice and names only what is
// poured.
func TestNamesAreInTheFormOfTheTrade(t *testing.T) {
	b := bartest.New(t)
	form := regexp.MustCompile(`^\p{Lu}[^:]*: sour, [a-z ]+$`)
	for i := range b.Proven {
		s := &b.Proven[i].Spec
		name := wording.NameOf(s, nil, "sour")
		assert.Regexp(t, form, name)
		head, _, _ := strings.Cut(name, ":")
		said := strings.FieldsFunc(strings.ReplaceAll(strings.ToLower(head), " and ", ", "), func(r rune) bool { return r == ',' })
		for k := range said {
			said[k] = strings.TrimSpace(said[k])
		}
		slices.Sort(said)
		assert.Equal(t, len(said), len(slices.Compact(slices.Clone(said))), name)
		for _, word := range said {
			assert.True(t, slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
				return strings.Contains(strings.ToLower(p.Profile.Name), word)
			}), "%s: %q is not poured", name, word)
		}
	}
}
