package likeliest_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/likeliest"
)

// names are ingredients of the shelf of tests, one of which is no part of another.
var names = []string{"London dry gin", "lemon juice", "sweet vermouth", "simple syrup", "pineapple juice"}

// However pours are written one behind the other, each is found with its own amount, and the
// order of the pours is theirs.
func TestEveryPourIsFoundWithItsAmount(t *testing.T) {
	shelf := drafttest.Bar()
	rapid.Check(t, func(t *rapid.T) {
		order := rapid.Permutation(names).Draw(t, "names")
		n := rapid.IntRange(2, len(order)).Draw(t, "pours")
		behind := rapid.Bool().Draw(t, "amounts behind")
		sep := rapid.SampledFrom([]string{" ", ", ", " / ", "\n", " + ", "; "}).Draw(t, "separator")
		unit := rapid.SampledFrom([]string{" oz", "oz"}).Draw(t, "unit")
		var text, want []string
		for i, name := range order[:n] {
			amount := strconv.FormatFloat(float64(rapid.IntRange(1, 12).Draw(t, "quarters"))/4, 'f', -1, 64)
			want = append(want, amount+" oz "+name)
			if behind {
				text = append(text, name+" "+amount+unit)
			} else {
				text = append(text, amount+unit+" "+order[i])
			}
		}
		written := strings.Join(text, sep)
		l, ok := likeliest.AsList(written, naming.NewResolver(shelf))
		if !ok {
			t.Fatalf("%q is not parted", written)
		}
		assert.Equal(t, strings.Join(want, "\n"), l.Text, written)
	})
}

// pieces are words and signs of drafts.
var pieces = []string{"2", "1.5", "oz", "ml", "London dry gin", "lemon juice", "sweet vermouth", "mint", "shake", "shk", "up", "no", "salt", "or", "umeboshi", ",", "/", "\n", "?", "(", ")", ":", "Sam", "ok", "so", "instead", "make it", "top", "3 min", "22:41", "rev 3", "each"}

// Whatever stands in a text, no number of it is lost: it is an amount of the list, or stands in
// a stretch that is told to be passed over.
func TestNoNumberIsLost(t *testing.T) {
	shelf := drafttest.Bar()
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 4, 16).Draw(t, "pieces"), " ")
		l, ok := likeliest.AsList(text, naming.NewResolver(shelf))
		if !ok {
			return
		}
		rest := []byte(text)
		for _, at := range l.Passed {
			for i := at.Start; i < at.End; i++ {
				rest[i] = ' '
			}
		}
		kept := l.Text
		for _, n := range l.Notes { // an amount that was replaced
			if _, was, ok := strings.Cut(n, "replaces “"); ok {
				kept += "\n" + was
			}
		}
		for f := range strings.FieldsSeq(string(rest)) {
			if f == "1.5" || f == "2" || f == "3" {
				assert.Contains(t, kept, f, "%q is read as %q", text, l.Text)
			}
		}
		again, _ := likeliest.AsList(text, naming.NewResolver(shelf))
		assert.Equal(t, l, again, "the same text is read in the same way")
	})
}

// No text makes it fail, and what is passed over lies within the text, in order.
func FuzzAsList(f *testing.F) {
	for _, seed := range []string{"1.5gin 2lemon juice", "Sam: ok so its 2 oz gin 1 oz lemon juice", "[22:41] a: 1 gin", "½gin2¾", "1 1/2oz | 45 ml", "make it 1 gin instead", "#7", "(\n\"'", "6O gin", "é/w", "2\x00gin"} {
		f.Add(seed)
	}
	shelf := drafttest.Bar()
	f.Fuzz(func(t *testing.T, text string) {
		l, ok := likeliest.AsList(text, naming.NewResolver(shelf))
		if !ok {
			return
		}
		last := 0
		for _, at := range l.Passed {
			if at.Start < last || at.End <= at.Start || at.End > len(text) {
				t.Fatalf("%q: %v", text, l.Passed)
			}
			last = at.End
		}
	})
}
