package main

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/api/shape"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	drafts "counterpour/flavor/measure/draft"
)

// answerIn reads an answer as it is typed. Pours, options and drinks count from 1.
func answerIn(line string, r *shape.RoundAnswer) (a shape.GuessedBody, err error) {
	words := strings.Fields(line)
	switch drill.Kind(r.Round.Kind) {
	case drill.KindFault:
		at, err := chosenIn(line, len(r.Sayings), func(i int) []string {
			return append(strings.Split(r.Sayings[i].Guest, ", "), r.Sayings[i].Plain, r.Sayings[i].Guest)
		})
		if err == nil {
			a.Axis, a.High = r.Sayings[at].Axis, r.Sayings[at].High
		}
		return a, err
	case drill.KindMend:
		return moveIn(words, &r.Drinks[0].Spec)
	case drill.KindOrder:
		for _, word := range strings.FieldsFunc(line, notDigit) {
			at, err := chosen(word, len(r.Drinks))
			if err != nil {
				return a, err
			}
			a.Order = append(a.Order, at)
		}
		return a, nil
	case drill.KindGuess:
		words := figuresIn(line)
		if len(words) != 2 {
			return a, unread("write two numbers, the strength in %% vol and the volume in mL, such as 14 150")
		}
		for i, into := range []*float64{&a.ABVPct, &a.VolumeML} {
			if *into, _, err = amountIn(words[i]); err != nil {
				return a, err
			}
		}
		return a, nil
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

// moveIn reads which pour is changed, and its new amount.
func moveIn(words []string, s *shape.Spec) (a shape.GuessedBody, err error) {
	if len(words) < 2 {
		return a, unread("write the number of the pour and its new amount in its unit, such as 2 3/4")
	}
	if a.Pour, err = chosen(words[0], len(s.Pours)); err != nil {
		return a, err
	}
	var unit flavor.Unit
	if a.Amount, unit, err = amountIn(strings.Join(words[1:], " ")); err == nil && unit != "" && string(unit) != s.Pours[a.Pour].Unit {
		return a, unread("write the amount in %s, as the drink does", s.Pours[a.Pour].Unit)
	}
	return a, err
}

func amountIn(text string) (float64, flavor.Unit, error) {
	v, unit, ok := drafts.ParseAmount(text)
	if !ok {
		return 0, "", unread("%q is no amount; write a number, such as 1.5 or 3/4", text)
	}
	return v, unit, nil
}

// chosen reads a number of a list that counts from 1, as one that counts from 0.
func chosen(word string, n int) (int, error) {
	at, err := strconv.Atoi(strings.TrimSpace(word))
	if err != nil || at < 1 || at > n {
		return 0, unread("%q is none of the numbers; write one from 1 to %d", strings.TrimSpace(word), n)
	}
	return at - 1, nil
}

func unread(format string, args ...any) error {
	return flavor.Invalid("answer", "", format, args...)
}

// leastTyped is how many letters of an answer must be typed to choose it by its words.
const leastTyped = 3

// chosenIn reads which of a list is meant: by its number from 1, or by words of one of them
// and of no other. Whole names come before parts of them.
func chosenIn(typed string, n int, namesOf func(int) []string) (int, error) {
	word := strings.ToLower(strings.TrimSpace(typed))
	whole := func(name string) bool { return name == word }
	part := func(name string) bool { return len(word) >= leastTyped && strings.Contains(name, word) }
	for _, is := range []func(string) bool{whole, part} {
		var found []int
		for i := range n {
			if slices.ContainsFunc(namesOf(i), func(name string) bool { return is(strings.ToLower(name)) }) {
				found = append(found, i)
			}
		}
		if len(found) == 1 {
			return found[0], nil
		}
	}
	return chosen(typed, n)
}

func notDigit(r rune) bool { return r < '0' || r > '9' }

// figuresIn splits a line into what is written beside signs and units: "14 % vol, 150 ml".
func figuresIn(line string) []string {
	bare := strings.NewReplacer("%", " ", "vol", " ", "ml", " ", "mL", " ", ", ", " ").Replace(line)
	words := strings.Fields(bare)
	if len(words) == 1 {
		words = strings.Split(words[0], ",")
	}
	return words
}
