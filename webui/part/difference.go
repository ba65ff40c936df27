package part

import (
	htmltemplate "html/template"
	"math"

	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/sense"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Difference is what a guest could notice between two drinks.
type Difference struct {
	SVG    htmltemplate.HTML // empty if no difference is large enough to draw
	Colour string            // "Straw turns amber."; empty if not visible
}

// How many senses and aromas are drawn, and the smallest difference in steps.
const (
	mostSenses = 4
	mostAromas = 2
	leastShift = 1.0 / 3
)

// DifferenceOf draws the difference between two drinks; nil if one cannot be mixed. id
// must be unique on the page.
func DifferenceOf(bar behind.Bar, id string, from, to *flavor.Spec) (*Difference, error) {
	c, err := bar.Contrast(from, to)
	if err != nil {
		if len(flavor.DataFaultsOf(err)) > 0 {
			return nil, nil
		}
		return nil, err
	}
	d := &Difference{}
	if c.Colour != "" {
		d.Colour = words.Sentence(c.Colour)
	}
	if shifts := shiftsOf(c); len(shifts) > 0 {
		d.SVG = draw.ShiftsSVG(id, say.It("part.what-changes"), shifts)
	}
	return d, nil
}

// shiftsOf selects what is drawn: the senses that change most, then the aromas that do.
func shiftsOf(c *kitchen.Contrast) []draw.Shift {
	var out []draw.Shift
	for _, s := range c.Steps.Largest(leastShift) {
		word := s.Direction(c.Steps[s])
		if s == sense.Colour {
			word = say.It("part.another-colour")
		}
		if word != "" && len(out) < mostSenses {
			out = append(out, draw.Shift{Word: word, Steps: c.Steps[s]})
		}
	}
	for _, n := range c.Notes[:min(len(c.Notes), mostAromas)] {
		word := say.It("part.more", "Aromas", n.Note.ID)
		if n.Steps < 0 {
			word = say.It("part.less", "Aromas", n.Note.ID)
		}
		if math.Abs(n.Steps) >= leastShift {
			out = append(out, draw.Shift{Word: word, Steps: n.Steps, Aroma: true})
		}
	}
	return out
}
