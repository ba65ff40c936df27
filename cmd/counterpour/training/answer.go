package training

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"counterpour/api/shape"
	"counterpour/api/shape/training"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/measure"
	drafts "counterpour/flavor/measure/draft"
)

// answerIn reads an answer as it is typed. Pours, options and drinks count from 1.
func answerIn(line string, r *training.RoundAnswer) (a training.GuessedBody, err error) {
	switch drill.Kind(r.Round.Kind) {
	case drill.KindFault:
		at, err := chosenIn(line, len(r.Sayings), func(i int) []string {
			s := &r.Sayings[i]
			return append(append(strings.Split(s.Guest, ", "), s.Plain, s.Guest), s.Also...)
		})
		if err == nil {
			a.Axis, a.High = r.Sayings[at].Axis, r.Sayings[at].High
		}
		return a, err
	case drill.KindMend:
		return moveIn(line, &r.Drinks[0].Spec)
	case drill.KindOrder:
		a.Order, err = orderIn(line, r.Drinks)
		return a, err
	case drill.KindGuess:
		return guessIn(line)
	}
	number, lost, _ := strings.Cut(line, ",")
	if a.Option, err = chosenIn(number, len(r.Options), func(i int) []string { return []string{r.Options[i].Label} }); err != nil {
		return a, err
	}
	for word := range strings.SplitSeq(lost, ",") {
		if word = strings.TrimSpace(word); word != "" {
			a.Lost = append(a.Lost, word)
		}
	}
	return a, nil
}

// orderIn reads the drinks of an order by their numbers, apart or run together, or by words of
// their names with commas between.
func orderIn(line string, of []training.RoundDrink) (order []int, err error) {
	words := strings.FieldsFunc(line, func(r rune) bool { return !unicode.IsDigit(r) })
	switch {
	case strings.ContainsFunc(line, unicode.IsLetter):
		words = strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(",;<>", r) })
	case len(words) == 1:
		words = strings.Split(words[0], "")
	}
	for _, word := range words {
		at, err := chosenIn(word, len(of), func(i int) []string { return []string{of[i].Spec.Name} })
		if err != nil {
			return nil, err
		}
		if slices.Contains(order, at) {
			return nil, unread("%s is there twice; write each drink once, the least first, such as 2 1 3", of[at].Spec.Name)
		}
		order = append(order, at)
	}
	if len(order) != len(of) {
		return nil, unread("write all %d drinks once each, the least first, such as 2 1 3", len(of))
	}
	return order, nil
}

// figure is a number and what it counts.
var figure = regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)\s*(%|percent|per cent|abv|vol|ml|cl|oz)?`)

// guessIn reads a strength and a volume: in this order, or whichever of them bears a sign of
// what it is.
func guessIn(line string) (a training.GuessedBody, err error) {
	found := figure.FindAllStringSubmatch(line, -1)
	if one, more, cut := strings.Cut(line, ","); cut && len(found) == 1 {
		found = figure.FindAllStringSubmatch(one+" "+more, -1)
	}
	if len(found) != 2 {
		return a, unread("write two numbers, the strength in %% vol and the volume in mL, such as 14 150")
	}
	strength, volume := found[0], found[1]
	if _, first := measure.ParseUnit(strength[2]); first {
		strength, volume = volume, strength
	}
	if a.ABVPct, _, err = amountIn(strength[1]); err != nil {
		return a, err
	}
	ml, unit, err := amountIn(volume[1] + " " + volume[2])
	if err != nil {
		return a, err
	}
	if per, ok := measure.MLPerUnit(unit, nil); ok {
		ml *= per
	}
	a.VolumeML = ml
	return a, nil
}

// leaving begins an answer that pours nothing of something.
var leaving = []string{"leave out", "leave off", "without", "drop", "omit", "no"}

// moveIn reads which pour is changed, by its number or words of its name, and its new amount
// in whatever volume; nothing is poured of what is left out.
func moveIn(line string, s *shape.Spec) (a training.GuessedBody, err error) {
	nameOf := func(i int) []string { return []string{s.Pours[i].Name} }
	line = strings.Join(strings.Fields(strings.NewReplacer(":", " ", "=", " ", "→", " ", " to ", " ", " of ", " ").Replace(line)), " ")
	for _, word := range leaving {
		if what, left := strings.CutPrefix(strings.ToLower(line), word+" "); left {
			a.Pour, err = chosenIn(what, len(s.Pours), nameOf)
			return a, err
		}
	}
	words := strings.Fields(line)
	for i := 1; i < len(words); i++ {
		before, after := strings.Join(words[:i], " "), strings.Join(words[i:], " ")
		ways := [][2]string{{before, after}}
		if strings.ContainsFunc(after, unicode.IsLetter) {
			ways = append(ways, [2]string{after, before}) // the number of a pour comes first
		}
		for _, x := range ways {
			at, err := chosenIn(x[0], len(s.Pours), nameOf)
			if err != nil {
				continue
			}
			amount, unit, ok := drafts.ParseAmount(x[1])
			if a.Pour = at; strings.Fields(x[1])[0] == "0" {
				return a, nil
			}
			if ok {
				a.Amount, err = inUnitOf(amount, unit, &s.Pours[at])
				return a, err
			}
		}
	}
	return a, unread("write the number of the pour, or words of its name, and its new amount in its unit, such as 2 3/4")
}

// inUnitOf is an amount in the unit of a pour: what names no unit is in it already.
func inUnitOf(amount float64, unit flavor.Unit, p *shape.Pour) (float64, error) {
	if unit == "" || string(unit) == p.Unit {
		return amount, nil
	}
	from, ok := measure.MLPerUnit(unit, nil)
	to, also := measure.MLPerUnit(flavor.Unit(p.Unit), nil)
	if !ok || !also {
		return 0, unread("write the amount in %s, as the drink does", p.Unit)
	}
	return amount * from / to, nil
}

func amountIn(text string) (float64, flavor.Unit, error) {
	v, unit, ok := drafts.ParseAmount(strings.TrimSpace(text))
	if !ok {
		return 0, "", unread("%q is no amount; write a number, such as 1.5 or 3/4", text)
	}
	return v, unit, nil
}

func unread(format string, args ...any) error {
	return flavor.Invalid("answer", "", format, args...)
}
