package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/flavor/sense"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Shift is a difference between two drinks that a guest could notice.
type Shift struct {
	Word  string  // "drier", "more clove"
	Steps float64 // noticeable steps; positive if the second drink has more
	Aroma bool    // a note of the aroma, not a taste or a look
}

// Sizes of the drawing, in its own units. All rows have the same scale in steps, so that
// the shaded part is what a guest will not notice, in every row.
const (
	shiftsWidth  = 330.0
	shiftRow     = 23.0
	shiftFoot    = 17.0
	shiftMiddle  = 238.0
	shiftReach   = 90.0 // from the middle to either end
	shiftMost    = 5.0  // steps at either end
	shiftPerStep = shiftReach / shiftMost
	shiftDot     = 5.0
	shiftRing    = 3.5
)

// ShiftsSVG draws the differences between two drinks as an SVG element, one row each. A
// ring in the middle stands for the first drink, the mark for the second: to the left if
// it has less, to the right if it has more. Tastes and looks are discs, aromas diamonds;
// an arrow stands for a mark beyond the end. The dark shade is what a guest will not
// notice, the pale one what they may notice.
func ShiftsSVG(id, title string, shifts []Shift) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	bottom := shiftRow * float64(len(shifts))
	fmt.Fprintf(&b, `<svg class="shifts" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" font-size="13.5" fill="currentColor">`+"\n",
		esc(id), unit(shiftsWidth), unit(bottom+shiftFoot))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(title), esc(shiftsSentence(shifts)))
	for _, zone := range []struct {
		class string
		steps float64
		fill  string
	}{{"may", sense.WillFrom, "0.1"}, {"wont", sense.MayFrom, "0.24"}} {
		fmt.Fprintf(&b, `<rect class="%s" x="%s" width="%s" height="%s" fill-opacity="%s"/>`+"\n",
			zone.class, unit(shiftMiddle-zone.steps*shiftPerStep), unit(2*zone.steps*shiftPerStep), unit(bottom), zone.fill)
	}
	for i := range shifts {
		drawShift(&b, &shifts[i], shiftRow*(float64(i)+0.5))
	}
	for _, mark := range []struct {
		word sense.Notice
		at   float64 // steps
	}{{sense.WillNotice, -4}, {sense.MayNotice, -2}, {sense.WontNotice, 0}, {sense.MayNotice, 2}, {sense.WillNotice, 4}} {
		fmt.Fprintf(&b, `<text class="quiet" x="%s" y="%s" font-size="11" text-anchor="middle">%s</text>`+"\n",
			unit(shiftMiddle+mark.at*shiftPerStep), unit(bottom+12), mark.word)
	}
	fmt.Fprintf(&b, `<text class="quiet" x="0" y="%s" font-size="11">%s</text>`+"\n</svg>\n", unit(bottom+12), esc(say.It("draw.a-guest-notices")))
	return htmltemplate.HTML(b.String())
}

// drawShift draws a row; y is its middle.
func drawShift(b *strings.Builder, s *Shift, y float64) {
	esc := htmltemplate.HTMLEscapeString
	fmt.Fprintf(b, `<path d="M%s %sH%s" stroke="currentColor" stroke-opacity="0.35" stroke-dasharray="1 4"/><text x="0" y="%s">%s</text>`,
		unit(shiftMiddle-shiftReach), unit(y), unit(shiftMiddle+shiftReach), unit(y+4.5), esc(s.Word))
	steps := finite(s.Steps, 0)
	x := shiftMiddle + shiftPerStep*math.Max(-shiftMost, math.Min(shiftMost, steps))
	fmt.Fprintf(b, `<path d="M%s %sH%s" stroke="currentColor" stroke-width="1.5"/><circle class="ring" cx="%s" cy="%[2]s" r="%[5]s" fill="#fff" stroke="currentColor" stroke-width="1.5"/>`,
		unit(shiftMiddle), unit(y), unit(x), unit(shiftMiddle), unit(shiftRing))
	switch {
	case math.Abs(steps) > shiftMost:
		back := math.Copysign(2*shiftDot, steps)
		fmt.Fprintf(b, `<path d="M%s %sl%s %sv%sz"/>`, unit(x), unit(y), unit(-back), unit(-shiftDot), unit(2*shiftDot))
	case s.Aroma:
		fmt.Fprintf(b, `<path d="M%[1]s %[2]sl%[3]s %[3]sl-%[3]s %[3]sl-%[3]s -%[3]sz"/>`, unit(x), unit(y-shiftDot-1), unit(shiftDot+1))
	default:
		fmt.Fprintf(b, `<circle cx="%s" cy="%s" r="%s"/>`, unit(x), unit(y), unit(shiftDot))
	}
	b.WriteString("\n")
}

// shiftsSentence describes the drawing.
func shiftsSentence(shifts []Shift) string {
	said := make([]string, len(shifts))
	for i, s := range shifts {
		said[i] = say.It("draw.shift", "Word", s.Word, "Steps", words.Steps(math.Abs(s.Steps)), "Notice", sense.NoticeOf(math.Abs(s.Steps), false))
	}
	return words.Sentence(strings.Join(said, "; "))
}
