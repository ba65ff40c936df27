// Package wording says in a bartender's words what is poured for what is out, and what a
// guest tells between two glasses.
package wording

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Part says what is poured for what is out, and whether it goes on top once the rest is mixed.
func Part(p *flavor.Pour, onTop bool) string {
	text := measure.FormatAmount(p.Amount, p.Unit) + " " + p.Profile.Name
	if onTop {
		text += " on top"
	}
	return text
}

// LeaveOut says to pour nothing for what is out, and how to make the rest if otherwise.
func LeaveOut(was, is flavor.Method) string {
	if is == was {
		return "leave it out"
	}
	return "leave it out and " + string(is)
}

// AsSoftDrink adds that what is left is a drink without alcohol.
const AsSoftDrink = ", as a soft drink"

// Without adds what else had to go and nothing stands for; "" if that is nothing.
func Without(gone []*flavor.Profile) string {
	if len(gone) == 0 {
		return ""
	}
	names := make([]string, len(gone))
	for i, p := range gone {
		names[i] = p.Name
	}
	return ", and leave out the " + flavor.JoinAnd(names)
}

// Moves adds another pour that moves to an amount.
func Moves(p *flavor.Profile, to float64, u flavor.Unit) string {
	text := ", " + p.Name + " to " + measure.FormatAmount(to, u)
	if p.Base() {
		text += " (nothing else keeps the balance)"
	}
	return text
}

// Difference is what a guest may tell between two drinks.
type Difference struct {
	From, To     *sense.Percept
	Another      bool                 // it is another drink
	Called       string               // the name of the proven drink that it is, "" if it has none
	OtherSpirit  bool                 // it is made on a spirit of another class
	Gone         []sense.Lost         // what led what went and is gone
	Named        []sense.Lost         // of that, what is said
	Lost, Gained []flavor.AromaFamily // that a guest misses or meets
}

// tellAroma is how many steps an aroma must move to be told.
const tellAroma = 1.0

// namedAtMost is how many aromas a guest can name of one mixture: D. G. Laing and G. W.
// Francis, "The capacity of humans to identify odors in mixtures", Physiology & Behavior
// 46 (1989) 809, find three to four. From memory.
const namedAtMost = 4

// Aromas returns the families that a guest would miss, and those met, where one drink is
// poured for another: what moved most comes first, and no more than a guest can name.
func Aromas(from, to *mix.Drink) (lost, gained []flavor.AromaFamily) {
	moved := sense.AromasMoved(&from.Aroma, &to.Aroma, tellAroma)
	for _, m := range moved[:min(namedAtMost, len(moved))] {
		if m.Steps < 0 {
			lost = append(lost, m.Family)
		} else {
			gained = append(gained, m.Family)
		}
	}
	return lost, gained
}

// tellTaste is how many steps every sense but aroma must move to be told.
const tellTaste = 1.0

// words of a sense: what the glass is when there is more of it, and when less.
var words = map[sense.Sense][2]string{
	sense.Ethanol: {"stronger", "lighter"}, sense.Sweet: {"sweeter", "less sweet"}, sense.Sour: {"sharper", "less sharp"},
	sense.Salty: {"saltier", "less salty"}, sense.Bitter: {"more bitter", "less bitter"}, sense.Umami: {"more savoury", "less savoury"},
	sense.Pungent: {"hotter", "less hot"}, sense.Cooling: {"cooler on the tongue", "less cool on the tongue"},
	sense.Astringent: {"more tannin", "less tannin"}, sense.Carbonation: {"more fizz", "less fizz"},
	sense.Body: {"thicker", "thinner"}, sense.Fat: {"richer", "leaner"}, sense.Foam: {"more foam", "less foam"},
	sense.Cloud: {"cloudier", "clearer"}, sense.Volume: {"a little longer", "a little shorter"},
}

// drinkNamed puts the article before the name of a drink that has none of its own.
func drinkNamed(name string) string {
	switch {
	case strings.HasPrefix(name, "The "):
		return name
	case strings.ContainsAny(name[:1], "AEIOU"):
		return "an " + name
	}
	return "a " + name
}

// String says what led the missing ingredient and is gone, and what else a guest
// tells.
func (d *Difference) String() string {
	var told []string
	switch {
	case d.Called != "":
		told = append(told, "that is "+drinkNamed(d.Called)+", so tell the guest")
	case d.Another:
		told = append(told, "another drink")
	}
	if d.OtherSpirit && d.Called == "" {
		told = append(told, "another spirit, so tell the guest")
	}
	for _, l := range d.Named {
		told = append(told, "loses "+l.Material)
	}
	for _, f := range d.Lost {
		told = append(told, "less "+f.Word())
	}
	for _, f := range d.Gained {
		told = append(told, "more "+f.Word())
	}
	steps := sense.Between(d.From, d.To)
	for _, s := range steps.Largest(tellTaste) {
		w, ok := words[s]
		switch {
		case s == sense.Colour:
			if text, ok := sense.ColourChange(d.From, d.To); ok {
				told = append(told, text)
			}
		case ok && steps[s] > 0:
			told = append(told, w[0])
		case ok:
			told = append(told, w[1])
		}
	}
	same := sense.SameDrink(steps.Total(), len(d.Gone) > 0)
	switch {
	case len(told) == 0 && same:
		return "the same drink"
	case len(told) == 0:
		return "several small differences, none noticeable by itself"
	case same && !d.OtherSpirit:
		return "same drink, " + strings.Join(told, ", ")
	}
	return strings.Join(told, ", ")
}
