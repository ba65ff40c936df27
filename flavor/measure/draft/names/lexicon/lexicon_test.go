package lexicon

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The classes are those of WordNet's lexicographers.
func TestOf(t *testing.T) {
	for w, want := range map[string]Class{
		"corridor": Thing | Common, "corridors": Thing | Common | Plural, "sommelier": Person, "sommeliers": Person | Plural, "fortnight": Time, "fortnights": Time | Plural,
		"laminate": Verb, "laminated": Verb, "laminating": Verb, "verdant": Adjective, "verdantly": Adverb, "verdantness": Notion, "nowadays": Time | Adverb,
		"guest": Person | Common, "guests": Person | Common | Plural, "tables": Person | Verb | Common | Plural,
	} {
		got := Of(w)
		assert.Equal(t, want&(Person|Time|Plural|Common), got&(Person|Time|Plural|Common), w)
		assert.Equal(t, want, got&want, "%s: %b", w, got)
	}
}

// What may be poured, laid on a drink or measured, or says where a bottle is from, is no word of the list:
// common practice, no source.
func TestWhatMayBePouredIsUnknown(t *testing.T) {
	for _, w := range strings.Fields(`lime umeboshi saffron basil honey cream butter lager bitters porto amaro rum tea milk egg almond walnut sesame mustard celery wheat soy fish shrimp liver
		vinegar salt pepper clove cherry olive grape orchid hops barley agave ounce litre teaspoon gallon jamaica irish mexican demerara burgundy`) {
		assert.Zero(t, Of(w), w)
	}
	assert.Zero(t, Of(""))
	assert.Zero(t, Of("\n"))
}

// A short word is no slip of another, even where it may be poured; common practice, no source.
func TestWritten(t *testing.T) {
	for _, w := range []string{"coal", "bean", "corridors", "verdantly"} {
		assert.True(t, Written(w), w)
	}
	for _, w := range []string{"prot", "bere", "mikl", "ign", ""} {
		assert.False(t, Written(w), w)
	}
}

// Every word of the list is found, at its ends too, and stands in order.
func TestEveryWordIsFound(t *testing.T) {
	lines := strings.Split(strings.TrimSuffix(written, "\n"), "\n")
	var words []string
	for _, l := range lines {
		w, _, _ := strings.Cut(l, " ")
		words = append(words, w)
	}
	assert.True(t, slices.IsSorted(words))
	assert.Len(t, slices.Compact(slices.Clone(words)), len(words), "a word stands once")
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.SampledFrom([]int{0, 1, len(lines) - 1, rapid.IntRange(0, len(lines)-1).Draw(t, "line")}).Draw(t, "which")
		w, classes, _ := strings.Cut(lines[i], " ")
		c, listed := find(w)
		assert.True(t, listed, w)
		assert.Equal(t, ClassOf(classes), c, w)
		_, listed = find(w + "\x00")
		assert.False(t, listed, w)
	})
}

// A lookup allocates nothing.
func TestOfAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() { Of("corridors") }))
}

func TestGrown(t *testing.T) {
	for _, w := range []string{"caraway", "medlars", "nettle", "rowan", "cherries", "woodruff", "pumpkin"} {
		assert.True(t, Grown(w), w)
	}
	for _, w := range []string{"", "f", "table", "upholstery", "monday", "shaker", "zzxq", "zzz"} {
		assert.False(t, Grown(w), w)
	}
}
