package forgotten_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh/forgotten"
)

// What a drink lacks, and that it lacks nothing as it is. Common practice, no source.
func TestWhatWasForgottenIsFound(t *testing.T) {
	f, err := datatest.Refitted()
	require.NoError(t, err)
	var book forgotten.Book
	book.Grow(len(f.Proven))
	for i := range f.Proven {
		s := &f.Proven[i].Spec
		e := makeup.EquivalentsOf(s)
		lesson := forgotten.LessonOf(s, makeup.PartsIn(s), makeup.AmountsOf(s), &e)
		book.Add(&lesson)
	}
	width := template.DefaultTuning().HabitWidth
	for _, c := range []struct {
		whole, short string
		lacks        ratio.Axis
	}{
		{"2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up", "1 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Strong},
		{"2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up", "2 oz gin\n3/4 oz simple syrup\nshake, up", ratio.Sour},
		{"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up", "2 oz white rum\n1 oz lime juice\nshake, up", ratio.Sweet},
		{"2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n3 oz soda water\nshake, long", "2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, long", ratio.Long},
		{"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "2 oz rye whiskey\n1 oz sweet vermouth\nstir, up", ratio.Bitter},
	} {
		for text, want := range map[string][]ratio.Axis{c.whole: nil, c.short: {c.lacks}} {
			s, err := f.Catalogue.ReadSpec("", text)
			require.NoError(t, err)
			parts, ml, e := makeup.PartsIn(&s), makeup.AmountsOf(&s), makeup.EquivalentsOf(&s)
			var d forgotten.Draft
			d.Hold(&book, &s, nil, parts, ml, width, func(n int) []float64 { return make([]float64, n) })
			var got []ratio.Axis
			d.Lacks(ml, &e, func(x forgotten.Lack) {
				if x.Edges >= 1 {
					got = append(got, x.Axis)
				}
			})
			assert.Equal(t, want, got, "%s", text)
		}
	}
}
