package cover

import (
	"cmp"
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// tellAroma is how many steps an aroma must move to be told, and tellTaste the
// same for every other sense.
const (
	tellAroma = 1.0
	tellTaste = 1.0
)

// compareAromas notes the families that a guest would miss or meet.
func (t *task) compareAromas(c *Cover, drink *mix.Drink) {
	for f := range flavor.NumFamilies {
		switch steps := sense.StepsBetween(sense.Aroma, t.drink.Aroma[f], drink.Aroma[f]); {
		case steps <= -tellAroma:
			c.Lost = append(c.Lost, flavor.Family(f))
		case steps >= tellAroma:
			c.Gained = append(c.Gained, flavor.Family(f))
		}
	}
}

// text says the cover as one bartender to another, and what the guest will notice.
func (t *task) text(c *Cover, glass *sense.Glass) string {
	parts := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		parts[i] = measure.FormatAmount(p.Amount, p.Unit) + " " + p.Profile.Name
	}
	text := strings.Join(parts, " + ")
	if len(parts) == 0 {
		text = "leave it out"
	}
	for _, ch := range c.Changes {
		text += fmt.Sprintf(", %s to %s", ch.Profile.Name, measure.FormatAmount(ch.To, ch.Unit))
		if ch.Profile.Class.Part() == flavor.PartBase {
			text += " (nothing else keeps the balance)"
		}
	}
	return text + ": " + t.note(c, glass)
}

// words of a sense: what the glass is when there is more of it, and when less.
var words = map[sense.Sense][2]string{
	sense.Ethanol: {"stronger", "lighter"}, sense.Sweet: {"sweeter", "less sweet"}, sense.Sour: {"sharper", "less sharp"},
	sense.Salty: {"saltier", "less salty"}, sense.Bitter: {"more bitter", "less bitter"}, sense.Umami: {"more savoury", "less savoury"},
	sense.Pungent: {"hotter", "less hot"}, sense.Cooling: {"cooler on the tongue", "less cool on the tongue"},
	sense.Astringent: {"more tannin", "less tannin"}, sense.Carbonation: {"more fizz", "less fizz"},
	sense.Body: {"thicker", "thinner"}, sense.Fat: {"richer", "leaner"}, sense.Foam: {"more foam", "less foam"},
	sense.Cloud: {"cloudier", "clearer"}, sense.Volume: {"a little longer", "a little shorter"},
}

// note says what led the missing ingredient and is gone, and what else a guest
// tells.
func (t *task) note(c *Cover, glass *sense.Glass) string {
	var told []string
	if moved := cmp.Or(c.Beside, c.Distance); moved > LastJND {
		told = append(told, "another drink")
	}
	for _, l := range c.Gone {
		told = append(told, "loses "+l.Material)
	}
	for _, f := range c.Lost {
		told = append(told, "softer "+f.String())
	}
	for _, f := range c.Gained {
		told = append(told, "more "+f.String())
	}
	steps := sense.Between(t.glass, glass)
	for _, s := range steps.Largest(tellTaste) {
		switch w, ok := words[s]; {
		case s == sense.Colour:
			if text, ok := sense.ColourChange(t.glass, glass); ok {
				told = append(told, text)
			}
		case ok && steps[s] > 0:
			told = append(told, w[0])
		case ok:
			told = append(told, w[1])
		}
	}
	same := sense.SameDrink(c.Distance, len(c.Gone) > 0)
	switch {
	case len(told) == 0 && same:
		return "the same drink"
	case len(told) == 0:
		return "several small differences, none noticeable by itself"
	case same:
		return "same drink, " + strings.Join(told, ", ")
	}
	return strings.Join(told, ", ")
}
