package riffs

import (
	"net/url"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// wishes are what the riffs should do, as a form says.
type wishes struct {
	Ticked []string // of wishPairs
	More   string   // an aroma family, or empty
	Less   string
	Below  string // one of strengths, or empty
	Words  string // in the bartender's own words, separated by commas or lines
}

// wishPairs are the steps along each axis, there and back.
var wishPairs = [][2]string{
	{"stronger", "lighter"}, {"sweeter", "drier"}, {"sharper", "rounder"}, {"more bitter", "less bitter"}, {"longer", "shorter"},
}

// strengths are the limits of strength to choose from.
var strengths = []string{"below 20 %", "below 15 %", "below 12 %", "below 8 %", "alcohol-free"}

// readWishes reads the wishes of a form. What an address asks for that has no
// box of its own goes to the words, so that it is seen and can be changed.
func readWishes(sent url.Values) wishes {
	w := wishes{Words: form.Lines(sent.Get("words"))}
	var rest []string
	for _, said := range sent["toward"] {
		said = strings.TrimSpace(said)
		more, isMore := strings.CutPrefix(said, "more ")
		less, isLess := strings.CutPrefix(said, "less ")
		switch {
		case said == "":
		case slices.ContainsFunc(wishPairs, func(p [2]string) bool { return p[0] == said || p[1] == said }):
			if !slices.Contains(w.Ticked, said) {
				w.Ticked = append(w.Ticked, said)
			}
		case isMore && isFamily(more) && w.More == "":
			w.More = more
		case isLess && isFamily(less) && w.Less == "":
			w.Less = less
		case slices.Contains(strengths, said) && w.Below == "":
			w.Below = said
		default:
			rest = append(rest, said)
		}
	}
	if len(rest) > 0 {
		w.Words = strings.Join(append(splitWishes(w.Words), rest...), ", ")
	}
	return w
}

func isFamily(id string) bool {
	_, ok := flavor.ParseAromaFamily(id)
	return ok
}

// all lists every wish as package riff reads them.
func (w *wishes) all() []string {
	out := slices.Clone(w.Ticked)
	if w.More != "" {
		out = append(out, "more "+w.More)
	}
	if w.Less != "" {
		out = append(out, "less "+w.Less)
	}
	if w.Below != "" {
		out = append(out, w.Below)
	}
	return append(out, splitWishes(w.Words)...)
}

// splitWishes parts words at commas, semicolons and lines; a comma within a
// number stays.
func splitWishes(text string) []string {
	var out []string
	var b strings.Builder
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	flush := func() {
		if s := strings.TrimSpace(b.String()); s != "" {
			out = append(out, s)
		}
		b.Reset()
	}
	for i, r := range text {
		if r == '\n' || r == ';' || r == ',' && !(digit(i-1) && digit(i+1)) {
			flush()
			continue
		}
		b.WriteRune(r)
	}
	flush()
	return out
}

func (w *wishes) values(v url.Values) {
	for _, said := range w.all() {
		v.Add("toward", said)
	}
}

// Pairs are the steps along the axes to tick.
func (w *wishes) Pairs() [][]form.Option {
	var out [][]form.Option
	for _, p := range wishPairs {
		out = append(out, named(form.Options(p[:], w.Ticked...)))
	}
	return out
}

// Mores and Lesses are the aroma families to choose from.
func (w *wishes) Mores() []form.Option { return familyChoices("more ", w.More) }

func (w *wishes) Lesses() []form.Option { return familyChoices("less ", w.Less) }

func familyChoices(way, chosen string) []form.Option {
	var out []form.Option
	for _, f := range flavor.AromaFamilies() {
		out = append(out, form.Option{Value: way + f.ID, Name: f.ID, Chosen: f.ID == chosen})
	}
	return out
}

// Strengths are the limits of strength to choose from.
func (w *wishes) Strengths() []form.Option { return named(form.Options(strengths, w.Below)) }

// named gives wishes the names that the page shows; their values are what is parsed.
func named(wishes []form.Option) []form.Option {
	for i := range wishes {
		wishes[i].Name = nameOf(wishes[i].Value)
	}
	return wishes
}

func nameOf(wish string) string {
	switch wish {
	case "stronger":
		return say.It("riffs.stronger")
	case "lighter":
		return say.It("riffs.lighter")
	case "sweeter":
		return say.It("riffs.sweeter")
	case "drier":
		return say.It("riffs.drier")
	case "sharper":
		return say.It("riffs.sharper")
	case "rounder":
		return say.It("riffs.rounder")
	case "more bitter":
		return say.It("riffs.more-bitter")
	case "less bitter":
		return say.It("riffs.less-bitter")
	case "longer":
		return say.It("riffs.longer")
	case "shorter":
		return say.It("riffs.shorter")
	case "alcohol-free":
		return say.It("riffs.alcohol-free")
	}
	below, _ := strings.CutPrefix(wish, "below ")
	return say.It("riffs.below", "Strength", below)
}

// Any reports whether anything is wished.
func (w *wishes) Any() bool { return len(w.all()) > 0 }

// Line says in a line what is wished, empty if nothing is.
func (w *wishes) Line() string { return words.List(w.all()) }
