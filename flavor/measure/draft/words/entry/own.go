package entry

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// A measure, a shot or a jigger holds what that of the bar does. A draft may say how much this is.

// sizeOwn takes the amount o in brackets beside so many of a bar's own measure: what all of them come to,
// "2 shots (50 ml)", or what one holds, "4 measures (25 ml)". What may be either is a fault.
func (p *Written) sizeOwn(o *Written) {
	one, many := gauge.Own(p.Measure), p.Many
	per, _ := measure.MLPerUnit(o.Unit, nil)
	asAll, asOne := gauge.Holds(one, o.Amount*per/many), many > 1 && gauge.Holds(one, o.Amount*per)
	size := o.Amount
	switch {
	case many == 1 || asOne && !asAll:
	case asAll && !asOne:
		size /= many
	default:
		w := measure.FormatAmount(o.Amount, o.Unit)
		p.Fault = measure.Invalid("amount", w, "%q may be what one %s holds, or all that is poured; write the amount in oz, ml or cl alone", w, one)
		return
	}
	o.Amount = size
	p.holdEach(o)
}

// perOne say behind an amount that it is that of one measure: "2 measures (25 ml each)".
var perOne = vocabulary.Words(`each ea apiece`)

// holdEach takes the amount o as what each of a bar's own measures holds.
func (p *Written) holdEach(o *Written) {
	p.dropNote(gauge.Measures[p.Measure].Note)
	p.Amount, p.Unit, p.Sized = p.Many*o.Amount, o.Unit, true
	p.AddNote("a " + gauge.Own(p.Measure) + " is taken as " + measure.FormatAmount(o.Amount, o.Unit))
}

// dropNote takes back a note that was added last.
func (p *Written) dropNote(note string) {
	if note != "" {
		p.Note = strings.TrimSuffix(strings.TrimSuffix(p.Note, note), "; ")
	}
}

// OwnSize makes an amount of a bar's own measure so many times what one of them holds.
func (l *Line) OwnSize(size float64, u flavor.Unit) {
	if note := gauge.Measures[l.Measure].Note; note != "" {
		l.Note = strings.Trim(strings.ReplaceAll(l.Note, note, ""), "; ")
	}
	l.Amount, l.Unit, l.Sized = l.Many*size, u, true
}

// ofOwn reads how much one of a bar's own measures is behind its word, "= 25 ml", "is 25 ml", ": 25 ml";
// bracketed allows for none of these signs. It returns how many tokens that takes, 0 if it is not said.
func ofOwn(text string, toks []token.Token, bracketed bool) (Written, int) {
	at := 0
	for at < len(toks) && (toks[at].Is("=") || toks[at].Is(":") || sayingSize.Has(toks[at].Text)) {
		at++
	}
	if at == len(toks) || at == 0 && !bracketed || toks[at].Kind != token.Numeral {
		return Written{}, 0
	}
	end := at + 1
	for end < len(toks) && toks[end].Kind != token.Mark {
		end++
	}
	p := Read(text, toks[at:end])
	if p.Shape != ShapeAmount || p.Fault != nil || !p.Unit.Jigger() || p.Measure != "" {
		return Written{}, 0
	}
	return p, end
}

// sayingSize join a measure and what one of it holds.
var sayingSize = vocabulary.Words(`is are here equals holds hold means of at being was`)

// OwnSizes takes what says how much the bar's own measures hold off some tokens, "1 measure = 25 ml",
// "(shot 25 ml)", and returns it beside the rest. It leaves what says so beside a pour: "1 shot (25 ml) gin".
func OwnSizes(text string, toks []token.Token) (rest []token.Token, sizes []Written) {
	rest = toks
	for i := 0; i < len(rest); i++ {
		one := gauge.Own(rest[i].Text)
		if rest[i].Kind != token.Word || one == "" {
			continue
		}
		from := i
		for from > 0 && (rest[from-1].Kind == token.Numeral && rest[from-1].Value == 1 || leadsOwn.Has(rest[from-1].Text)) {
			from--
		}
		bracketed := from > 0 && rest[from-1].Is("(")
		if from > 0 && rest[from-1].Kind != token.Mark {
			continue
		}
		size, n := ofOwn(text, rest[i+1:], bracketed)
		if n == 0 {
			continue
		}
		end := i + 1 + n
		if bracketed && end < len(rest) && rest[end].Is(")") {
			from, end = from-1, end+1
		}
		size.Measure = one
		sizes = append(sizes, size)
		rest = append(rest[:from:from], rest[end:]...)
		i = from - 1
	}
	return rest, sizes
}

// leadsOwn lead to a measure whose size is told: "our shots are 25 ml".
var leadsOwn = vocabulary.Words(`a an one each every the our all house where with note nb`)

// SameAmount reports whether two lines pour as much, but for how units are rounded.
func (l *Line) SameAmount(o *Line) bool {
	a, okA := measure.MLPerUnit(l.Unit, nil)
	b, okB := measure.MLPerUnit(o.Unit, nil)
	return okA && okB && math.Abs(a*l.Amount-b*o.Amount) <= agreement*max(a*l.Amount, b*o.Amount)
}
