package parting

import (
	"strings"
	"unicode/utf8"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// sentenceEnds reports whether the stop at i ends a sentence and not an
// abbreviation.
func sentenceEnds(toks []token.Token, i, from int) bool {
	before := &toks[i-1]
	if i+1 < len(toks) && toks[i+1].Kind == token.Word && measure.BeginsLongUnit(before.Text) {
		if _, unit := measure.ParseUnit(before.Text + " " + toks[i+1].Text); unit { // "1 ст. л."
			return false
		}
	}
	if s := serving.Read(toks[from:i]); s.States() && len(s.Unknown) == 0 { // "stir. big cube. orange peel"
		return true
	}
	if before.Kind == token.Word && i > from+1 && toks[i-2].Kind == token.Numeral && entry.IsUnit(before) && i+1 < len(toks) && toks[i+1].Kind == token.Numeral && !entry.StartsAmount(toks[from:]) {
		return true // "brown sugar 10 g. 1 orange slice"
	}
	if before.Kind == token.Numeral && toks[from].Kind == token.Word && i+1 < len(toks) && (toks[i+1].Kind == token.Word && !entry.UnitWordsAt(toks[i+1:]) || toks[i+1].Kind == token.Numeral && Named(toks[from:i])) {
		return true // "egg white .5. Dry shake", "simple 1/4. 2 dashes"
	}
	if u, unit := measure.ParseUnit(before.Text); unit && u.Counted() && i+1 < len(toks) && toks[i+1].Kind == token.Word && !entry.StartsAmount(toks[from:]) && before.End-before.Start > 2 {
		return true // "clover leaf. Gin 45 ml"
	}
	if entry.IsUnit(before) && before.End-before.Start > 3 && i > from+1 && i+1 < len(toks) && serving.Starts(toks[i+1:]) {
		return true // "soda splash. wine glass"
	}
	if before.Kind == token.Word && Measured(before) && i+1 < len(toks) && toks[i+1].Kind == token.Word {
		if i > 1 && toks[i-2].Kind == token.Numeral {
			if _, n := serving.TermAt([]string{toks[i+1].Text}); from > 0 && i-2 == from && n > 0 {
				return true // "saline - 4 drops. Shake."
			}
			return !entry.StartsAmount(toks[from:]) // "Bourbon 60 ml. Lemon 20 ml."
		}
		if _, n := serving.TermAt([]string{toks[i+1].Text}); n > 0 || serving.StepVerbs[toks[i+1].Text] {
			return true // "2 basil sprigs. Shake."
		}
	}
	if before.Kind != token.Word || i+1 >= len(toks) {
		return before.Is(")")
	}
	if utf8.RuneCountInString(before.Text) < 3 && toks[i+1].Kind == token.Word && serving.StartsMethod(toks[i+1:]) {
		return true // "sweet v. stir"
	}
	if u, unit := measure.ParseUnit(before.Text); (unit || utf8.RuneCountInString(before.Text) < 3) && !u.After() {
		return utf8.RuneCountInString(before.Text) >= 3 && toks[i+1].Kind == token.Numeral || shortWords.Has(before.Text)
	}
	if next := toks[i+1:]; next[0].Kind == token.Word && serving.StartsMethod(next) && (entry.StartsAmount(toks[from:]) || orderWords.Has(next[0].Text)) { // "1 dash ango. shake", "bianco verm. stir"
		return true
	} else if next[0].Kind == token.Numeral && entry.UnitWordsAt(next[1:]) && i > from+1 && entry.StartsAmount(toks[from:]) { // "1 pt vanilla syr. 1 pt = 15 ml"
		return true
	}
	return !abbreviations.Has(before.Text[strings.LastIndexByte(before.Text, '-')+1:]) // "acid-adj. orange"
}

// orderWords are words of method that stand in no name: there is blended whisky, and none
// that is stirred.
var orderWords = vocabulary.Words(`stir stirred shake shaken build throw swizzle`)

// shortWords are words of two letters that end a sentence as any other does.
var shortWords = vocabulary.Words(`it up in on us me so go no is do`)

var abbreviations = vocabulary.Words(`adj adjd conc carb clar infus unsw choc cog fr ital rasp straw pine elder aro arom ang ango bour apr van cin cuc pom vod teq approx dbl swt syr verm liq bitt btrs gren cinn med lrg lge frsh org abs maras curac jam dem tsp tbsp bsp`)
