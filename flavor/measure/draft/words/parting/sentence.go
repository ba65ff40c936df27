package parting

import (
	"strings"
	"unicode/utf8"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// endsSentence reports whether a stop ends a sentence and not an abbreviation. The first rule that
// holds decides.
func (p *place) endsSentence() bool {
	switch {
	case p.stopInUnit():
		return false // "1 ст. л."
	case p.stopEndsService():
		return true // "stir. big cube. orange peel"
	case p.stopEndsAmount(), p.stopEndsCounted():
		return true // "simple 1/4. 2 dashes", "clover leaf. Gin 45 ml"
	}
	if p.before.Kind == token.Word && Measured(p.before) && p.next.Kind == token.Word {
		if p.i > 1 && p.toks[p.i-2].Kind == token.Numeral {
			return p.stopEndsMeasure()
		}
		if serving.Starts(p.toks[p.i+1:p.i+2]) || serving.StepVerbs[p.next.Text] {
			return true // "2 basil sprigs. Shake."
		}
	}
	switch {
	case p.before.Kind != token.Word || p.i+1 >= len(p.toks):
		return p.before.Is(")")
	case p.short() && p.methodNext():
		return true // "sweet v. stir"
	case p.shortened():
		return !p.short() && p.next.Kind == token.Numeral || shortWords.Has(p.before.Text)
	case p.methodNext() && (p.startsAmount() || orderWords.Has(p.next.Text)):
		return true // "1 dash ango. shake", "bianco verm. stir"
	case p.next.Kind == token.Numeral && entry.UnitWordsAt(p.toks[p.i+2:]) && p.i > p.from+1 && p.startsAmount():
		return true // "1 pt vanilla syr. 1 pt = 15 ml"
	}
	return !abbreviations.Has(p.before.Text[strings.LastIndexByte(p.before.Text, '-')+1:]) // "acid-adj. orange"
}

// stopInUnit reports whether the stop stands amid a unit of two words.
func (p *place) stopInUnit() bool {
	if p.next.Kind != token.Word || !measure.BeginsLongUnit(p.before.Text) {
		return false
	}
	_, unit := measure.ParseUnit(p.before.Text + " " + p.next.Text)
	return unit
}

// stopEndsService reports whether all before the stop says how the drink is made or served.
func (p *place) stopEndsService() bool {
	s := serving.Read(p.entry())
	return s.States() && len(s.Unknown) == 0
}

// stopEndsAmount reports whether an amount behind its name ends at the stop: "brown sugar 10 g. 1
// orange slice", "egg white .5. Dry shake".
func (p *place) stopEndsAmount() bool {
	if p.before.Kind == token.Numeral && p.toks[p.from].Kind == token.Word {
		return p.next.Kind == token.Word && !entry.UnitWordsAt(p.behindNext()) || p.next.Kind == token.Numeral && Named(p.entry())
	}
	return p.i > p.from+1 && entry.IsUnit(p.before) && p.toks[p.i-2].Kind == token.Numeral && p.next.Kind == token.Numeral && !p.startsAmount()
}

// leastCounted is the fewest bytes of a unit that is a word and no abbreviation; leastMeasured, of
// one that no method follows but at the end of a sentence.
const (
	leastCounted  = 3
	leastMeasured = 4
)

// stopEndsCounted reports whether a unit that is a whole word ends at the stop: "clover leaf. Gin 45
// ml", "soda splash. wine glass".
func (p *place) stopEndsCounted() bool {
	size := p.before.End - p.before.Start
	u, unit := measure.ParseUnit(p.before.Text)
	if unit && u.Counted() && p.next.Kind == token.Word && size >= leastCounted && !p.startsAmount() {
		return true
	}
	return size >= leastMeasured && entry.IsUnit(p.before) && p.i > p.from+1 && p.i+1 < len(p.toks) && serving.Starts(p.behindNext())
}

// stopEndsMeasure reports whether a number and its unit end at the stop: "Bourbon 60 ml. Lemon 20
// ml.", "saline - 4 drops. Shake."
func (p *place) stopEndsMeasure() bool {
	if p.from > 0 && p.i-2 == p.from && serving.Starts(p.toks[p.i+1:p.i+2]) {
		return true
	}
	return !p.startsAmount()
}

// leastWord is the fewest characters of a word that is no abbreviation by its length alone.
const leastWord = 3

// short reports whether the word before the stop is too short for a word of a sentence.
func (p *place) short() bool { return utf8.RuneCountInString(p.before.Text) < leastWord }

// shortened reports whether the word before the stop is short, or a unit that stands before its
// amount or behind it.
func (p *place) shortened() bool {
	u, unit := measure.ParseUnit(p.before.Text)
	return (unit || p.short()) && !u.After()
}

// methodNext reports whether a word for a method follows.
func (p *place) methodNext() bool {
	return p.next.Kind == token.Word && serving.StartsMethod(p.behindNext())
}

// orderWords are words of method that stand in no name: there is blended whisky, and none
// that is stirred.
var orderWords = vocabulary.Words(`stir stirred shake shaken build throw swizzle`)

// shortWords are words of two letters that end a sentence as any other does.
var shortWords = vocabulary.Words(`it up in on us me so go no is do`)

var abbreviations = vocabulary.Words(`adj adjd conc carb clar infus unsw choc cog fr ital rasp straw pine elder aro arom ang ango bour apr van cin cuc pom vod teq approx dbl swt syr verm liq bitt btrs gren cinn med lrg lge frsh org abs maras curac jam dem tsp tbsp bsp`)
