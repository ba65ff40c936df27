package jargon

import (
	"slices"
	"strings"

	"counterpour/flavor/carrier"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// adjectives change nothing about which ingredient is meant.
var adjectives = vocabulary.Words(`fresh freshly squeezed pressed thin thick large medium small big good quality cold chilled hot ripe whole strained homemade home-made house house-made housemade
fresh-squeezed freshly-squeezed fresh-pressed hand-pressed cold-pressed sliced peeled chopped diced torn halved quartered cut seeded deseeded hulled pitted lightly packed best decent local regular
organic natural nice style type our my thinly roughly finely plump unpeeled washed warm warmed heated steamed boiling iced your favourite favorite of the some a an any really very proper premium top-shelf decent-quality fine-strained double-strained just-squeezed day-fresh well-chilled ice-cold lovely whatever strong brewed dbl freshly-brewed loose-leaf well rail speed-rail hand hand-squeezed plain real true genuine authentic standard basic usual normal ordinary cheap inexpensive budget smooth classic traditional everyday craft artisan artisanal handmade
small-batch single-barrel single-cask canned tinned carton squeezed juiced fluffy fs freezer fridge refrigerated frozen xtra extra nicest finest superior high-quality good-quality spare leftover daily handcrafted batched pre-batched`)

// phrases are words that change nothing together, and may apart.
var phrases = token.Words(`house-made home-made hand-made small-batch single-barrel single-cask top-shelf speed-rail fine-strained double-strained cold-pressed grade-a high-quality good-quality room-temperature ice-cold freshly-squeezed fresh-squeezed`)

// Strip returns the name, then the name with fewer and fewer adjectives: without those at
// its end, without the leading ones one by one, and last without any.
func Strip(name string) []string {
	if plain(name) {
		return []string{name}
	}
	out := []string{name}
	add := func(words []string) {
		n := strings.Trim(strings.Join(words, " "), " ,;")
		if n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	words := strings.Fields(name)
	end := len(words)
	for end > 1 && Idle(words[end-1]) {
		end--
	}
	add(words[:end])
leading:
	for len(words) > 1 {
		switch {
		case len(words) > 2 && phrases[strings.ToLower(words[0]+"-"+words[1])]:
			words = words[2:]
		case Idle(words[0]):
			words = words[1:]
		default:
			break leading
		}
		add(words)
	}
	var rest []string
	for _, w := range words {
		if !Idle(w) || alterations[strings.ToLower(w)] { // "coconut washed rum" is no coconut rum
			rest = append(rest, w)
		}
	}
	if len(rest) < len(words) && len(rest) > 0 {
		add(rest)
	}
	if at := articled.FindStringIndex(name); at != nil {
		add(strings.Fields(name[at[1]:]))
	}
	return out
}

// plain reports whether a name surely has nothing that Strip takes away, as most have.
func plain(name string) bool {
	for from := 0; from <= len(name); {
		w, _, _ := strings.Cut(name[from:], " ")
		for i := range len(w) {
			if c := w[i] | 0x20; (c < 'a' || c > 'z') && (c < '0' || c > '9') {
				return false
			}
		}
		if w == "" || Idle(w) || beginsPhrase.Has(strings.ToLower(w)) {
			return false
		}
		from += len(w) + 1
	}
	return true
}

// beginsPhrase are the first words of phrases.
var beginsPhrase = func() *vocabulary.Set {
	var first []string
	for p := range phrases {
		w, _, _ := strings.Cut(p, "-")
		first = append(first, w)
	}
	return vocabulary.SetOf(first...)
}()

// articled is an article that runs into its noun: "l'eau gazeuse".
var articled = pattern.Of(`(?i)^[ld]['’]`)

// Idle reports whether a word of a name is an adjective that changes nothing.
func Idle(w string) bool { return adjectives.Has(strings.ToLower(strings.Trim(w, ",;()"))) }

// alterations are words that say what was done to a bottle: common practice, no source.
var alterations = token.Words(`washed wash infused infusion fat-washed milk-washed macerated 50/50 half mix mixed blend blended split`)

// ChangesBottle reports whether words say that something was added to a bottle, or name what carries an
// allergen, which no other name of a bottle is.
func ChangesBottle(text string) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(text)), func(w string) bool { return alterations[strings.Trim(w, ",;.+")] }) || len(carrier.Of(text).Marks) > 0
}
