package joining

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// equalOf reports whether a piece says that what follows is poured in equal parts: "equal
// parts", or "equal" alone.
func equalOf(p *Piece) bool {
	if p.Pour.Shape == entry.ShapeName {
		return len(p.Toks) == 1 && p.Toks[0].Text == "equal"
	}
	return p.Pour.Shape == entry.ShapeAmount && p.Pour.Each && p.Pour.Unit == flavor.PartUnit
}

// qualities say which of its kind a thing is, behind its name.
var qualities = token.Words(`dry extra sweet hot cold iced chilled warm dark white light gold golden aged fresh unsweetened sweetened strong weak red blanc bianco pink young old smoky peated navy
overproof spiced plain heated warmed sparkling still whole double single thick raw ripe green black yellow blanco reposado añejo anejo irish london rich diluted filtered unfiltered brewed cloudy clear pressed bottled`)

// Quality reports whether a word says which of its kind a thing is.
func Quality(w string) bool { return qualities[w] }

// qualified reports whether all that a pour names is which of its kind a thing is, before
// its amount: "extra dry 10 ml".
func qualified(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.AmountAt.Start > p.NameAt.Start && p.Figures &&
		!slices.ContainsFunc(p.NameTokens(), func(t token.Token) bool { return !qualities[t.Text] })
}

// timed reports whether tokens are a number of seconds, minutes or turns.
func timed(toks []token.Token) bool {
	return len(toks) == 2 && toks[0].Kind == token.Numeral && serving.DegreeWords[toks[1].Text]
}

// bracketed reports whether all that follows an amount stands in brackets.
func bracketed(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && strings.HasPrefix(p.Name, "(") && strings.HasSuffix(p.Name, ")")
}

// summable reports whether a pour states an amount that another can be added to.
func summable(p *entry.Written) bool { return p.Fault == nil && !p.Each && !p.AmountAt.Empty() }

// cutTo reports whether tokens say how far a syrup is thinned, "cut 2:1", which is
// part of its name and no step.
func cutTo(toks []token.Token) bool {
	return len(toks) > 1 && toks[0].Text == "cut" && toks[1].Kind == token.Ratio
}

// PourSteps are verbs of steps that put something into the drink.
var PourSteps = token.Words(`add pour muddle float top squeeze combine mix put drop layer finish fill lengthen rinse measure place`)
