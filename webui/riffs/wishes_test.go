package riffs

import (
	"net/url"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSplitWishes(t *testing.T) {
	for text, want := range map[string][]string{
		"": nil, " , ;\n": nil, "nuttier": {"nuttier"}, "no smoke, no rum;drier\nbelow 12,5 %": {"no smoke", "no rum", "drier", "below 12,5 %"}, "below 12, drier": {"below 12", "drier"}, "é,ü": {"é", "ü"},
	} {
		assert.Equal(t, want, splitWishes(text), "%q", text)
	}
}

func FuzzReadWishes(f *testing.F) {
	for _, s := range []string{"drier", "more nut", "below 12,5 %", "no rum; no smoke", ",;\n"} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, toward, words string) {
		w := readWishes(url.Values{"toward": {toward}, "words": {words}})
		v := url.Values{}
		w.values(v)
		again := readWishes(v)
		once := func(list []string) []string { return slices.Compact(slices.Sorted(slices.Values(list))) }
		assert.Equal(t, once(w.all()), once(again.all()), "an address asks for what the form asked for")
	})
}
