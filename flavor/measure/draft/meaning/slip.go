package meaning

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/serving"
)

// slippedUnit finds a word at either end of the name that is nearly a unit, where the
// rest is an ingredient: "2 ouncse gin". It returns the units that it is near to, the
// word and the rest; none if there is no such word.
func (r *resolver) slippedUnit(l *entry.Line) (near []string, word, rest string) {
	words := strings.Fields(l.Name)
	if len(words) < 2 || !l.UnitAt.Empty() {
		return nil, "", ""
	}
	if u := tongue.Spoon(strings.ToLower(strings.Trim(words[0], ".")), strings.Join(words[1:], " ")); u != "" {
		return []string{string(u)}, words[0], strings.Join(words[1:], " ")
	}
	last := len(words) - 1
	behind := !l.AmountAt.Empty() && l.AmountAt.Start > l.NameAt.Start
	for _, split := range []struct {
		word string
		rest []string
	}{{words[0], words[1:]}, {words[last], words[:last]}} {
		near := measure.SlippedUnits(split.word)
		if !l.Amid && behind == (split.word == words[0]) && (len(near) == 0 || !flavor.Unit(near[0]).Counted()) { // "2 lime wegdes", but a measure stands beside its number
			continue
		}
		if len(near) == 0 || len(split.word) < leastUnitSlip || serving.OtherMeasures[split.word] || serving.DegreeWords[split.word] || joining.Quality(strings.ToLower(split.word)) || r.resolver.Has(split.word+" syrup") { // gum is no gram
			continue
		}
		rest := strings.TrimPrefix(strings.Join(split.rest, " "), "of ")
		if f := r.resolver.Find(rest, naming.Place{Unit: flavor.Unit(near[0])}); f.Firm() {
			return near, split.word, rest
		}
	}
	return nil, "", ""
}

// leastUnitSlip is the letters of a word in which a slip of a unit is seen: shorter ones
// are words of their own, as "de" is.
const leastUnitSlip = 3

// misspeltUnit mends a slip in a unit where only one is near, and refuses the line where
// more are; it is false if there is none.
func (r *resolver) misspeltUnit(t *counting.Task) bool {
	near, word, rest := r.slippedUnit(t.Line)
	switch len(near) {
	case 0:
		return false
	case 1:
		own := *t.Line
		own.Name, own.Unit = rest, flavor.Unit(near[0])
		t.Line, t.Unit, t.Base = &own, own.Unit, naming.Found{}
		t.Infer(flavor.InferredUnit)
		t.Notes = append(t.Notes, "“"+word+"” is read as "+measure.UnitWord(t.Amount, t.Unit))
		t.Hit = r.resolver.Find(rest, naming.PlaceOf(t.Unit, t.Amount, own.After))
		return true
	}
	t.Fault = measure.Invalid("unit", word, "%q is no unit%s", word, measure.DidYouMean(near))
	t.Fault.Suggest = near
	return true
}
