package cover

import (
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
)

// tellAroma is how many just-noticeable differences an aroma must move to be
// told, and tellTaste the same for strength and volume.
const (
	tellAroma = 1.5
	tellTaste = 0.5
)

// compareAromas notes the families that a guest would miss or meet.
func (t *task) compareAromas(c *Cover, drink *mix.Drink) {
	floor := t.finder.weights.AromaFloor
	for f := range flavor.NumFamilies {
		was, is := t.drink.Aroma[f], drink.Aroma[f]
		jnd := (is - was) / (balance.WeberAroma * math.Max(was, floor))
		switch {
		case jnd <= -tellAroma:
			c.Lost = append(c.Lost, flavor.Family(f))
		case jnd >= tellAroma:
			c.Gained = append(c.Gained, flavor.Family(f))
		}
	}
}

// compareAllergens gathers what the covered drink carries, and what the
// original did not.
func (t *task) compareAllergens(c *Cover) {
	c.Marks, c.NewAllergens = c.Spec.Allergens(), c.Spec.NewAllergens(t.req.Spec)
}

// text says the cover as one bartender to another, and what the guest will notice.
func (t *task) text(c *Cover) string {
	parts := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		parts[i] = measure.FormatAmount(p.Amount, p.Unit) + " " + p.Profile.Name
	}
	text := strings.Join(parts, " + ")
	for _, ch := range c.Changes {
		text += fmt.Sprintf(", %s to %s", ch.Profile.Name, measure.FormatAmount(ch.To, ch.Unit))
		if ch.Profile.Class.Part() == flavor.PartBase {
			text += " (nothing else keeps the balance)"
		}
	}
	for _, p := range t.removed {
		if !t.req.missing(p) {
			text += fmt.Sprintf("; leaves out %s too, for this guest", p.Name)
		}
	}
	return text + ": " + t.note(c)
}

func (t *task) note(c *Cover) string {
	var words []string
	for _, f := range c.Lost {
		words = append(words, "softer "+f.String())
	}
	for _, f := range c.Gained {
		words = append(words, "more "+f.String())
	}
	if j := balance.WeberStrong * t.drink.ABV; math.Abs(c.ABVChange) > tellTaste*j {
		words = append(words, direction(c.ABVChange, "stronger", "lighter"))
	}
	if math.Abs(c.VolumeChange) > tellTaste*balance.WeberLong*t.drink.VolumeML {
		words = append(words, direction(c.VolumeChange, "a little longer", "a little shorter"))
	}
	if len(words) == 0 {
		return "the same drink"
	}
	return "same drink, " + strings.Join(words, ", ")
}

func direction(x float64, up, down string) string {
	if x > 0 {
		return up
	}
	return down
}
