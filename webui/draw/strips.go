package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/api/service/kitchen"
	"counterpour/flavor/ratio"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Range is one axis of a family at the size of one drink.
type Range = kitchen.Range

// Strip is one axis of the drawing: the amount in the drink and the range of its family.
type Strip struct {
	Axis  ratio.Axis
	ML    float64 // in mL of the axis's equivalent
	Range Range
}

// Place returns the position of the drink relative to the band.
func (s *Strip) Place() string {
	r := &s.Range
	switch {
	case !r.Has && s.ML <= r.High:
		return say.It("draw.no-more-than-the-family")
	case !r.Has:
		return say.It("draw.more-than-the-family")
	case s.ML > r.High:
		return say.It("draw.above-the-range")
	case s.ML < r.Low:
		return say.It("draw.below-the-range")
	}
	return say.It("draw.in-the-range")
}

// within reports whether the dot is in the band.
func (s *Strip) within() bool {
	return !(s.ML > s.Range.High) && (!s.Range.Has || !(s.ML < s.Range.Low))
}

// Amount formats the drink's amount with plus-or-minus and unit, with enough decimals for
// the smaller of the two.
func (s *Strip) Amount() string {
	d := words.MillilitreDecimals(s.ML)
	if s.Range.PlusMinus > 0 {
		d = max(d, words.MillilitreDecimals(10*s.Range.PlusMinus))
	}
	return strings.Join(strings.Fields(words.Figure(s.ML, d)+" "+words.PlusMinus(s.Range.PlusMinus, d)+" mL"), " ")
}

// Span formats the family's range.
func (s *Strip) Span() string {
	r := &s.Range
	if !r.Has {
		return say.It("draw.up-to", "ML", words.Millilitres(r.High))
	}
	return say.It("draw.from-to", "Low", words.Millilitres(r.Low), "High", words.Millilitres(r.High))
}

// Sizes of the drawing, in its own units. The bands are in one column, so that a balanced
// drink is a column of dots. The drawing is narrow, so that its text is legible on a
// phone.
const (
	drawWidth  = 360.0
	rowHeight  = 74.0
	leftEnd    = 12.0
	rightEnd   = 348.0
	bandLeft   = 110.0
	bandRight  = 250.0
	bandMiddle = (bandLeft + bandRight) / 2
	bandHeight = 18.0
	dotRadius  = 5.5
	tickHeight = 10.0 // half the height of the whisker's ends: they show above and below the dot
)

// at returns the x of an amount, and whether it was clamped to the end. The scale is
// logarithmic on either side of the centre, since taste follows ratios. On an axis that
// the family lacks, it starts at zero on the left.
func (s *Strip) at(ml float64) (x float64, clamped bool) {
	r := &s.Range
	switch {
	case !r.Has && r.High > 0:
		x = leftEnd + (bandRight-leftEnd)*ml/r.High
	case !r.Has && ml > 0:
		x = math.Inf(1)
	case !r.Has:
		x = leftEnd
	case ml >= r.Centre:
		x = bandMiddle + (bandRight-bandMiddle)*math.Log(ml/r.Centre)/math.Log(r.High/r.Centre)
	case ml > 0:
		x = bandMiddle - (bandMiddle-bandLeft)*math.Log(r.Centre/ml)/math.Log(r.Centre/r.Low)
	case ml <= 0:
		x = math.Inf(-1)
	default:
		x = math.NaN()
	}
	// A range of zero width has no scale; NaN is drawn in the middle.
	if math.IsNaN(x) {
		return bandMiddle, false
	}
	if x < leftEnd || x > rightEnd {
		return math.Min(math.Max(x, leftEnd), rightEnd), true
	}
	return x, false
}

// StripsSVG draws the axes of a drink as an SVG element: the family's range as a band,
// the drink as a dot with its plus-or-minus as a line. A full dot is in the band, a
// hollow one outside; an arrow stands for a dot beyond the end. It needs no colour and no
// style sheet: marks take the colour of the text. id must be unique on the page.
func StripsSVG(id, title string, strips []Strip) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	fmt.Fprintf(&b, `<svg class="strips" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" fill="currentColor">`+"\n",
		esc(id), unit(drawWidth), unit(rowHeight*float64(len(strips))))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(title), esc(stripsSentence(strips)))
	for i := range strips {
		fmt.Fprintf(&b, `<g class="axis" transform="translate(0 %s)">`+"\n", unit(rowHeight*float64(i)))
		drawStrip(&b, &strips[i])
		b.WriteString("</g>\n")
	}
	b.WriteString("</svg>\n")
	return htmltemplate.HTML(b.String())
}

// unit formats a coordinate to a tenth, which is finer than any screen shows and the same
// on every processor.
func unit(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

const (
	labelLine = 17.0
	markLine  = 38.0
	scaleLine = 63.0
)

func drawStrip(b *strings.Builder, s *Strip) {
	word := words.Axes()[s.Axis]
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="15"><tspan font-weight="bold">%s</tspan> <tspan font-size="12.5" class="quiet">%s</tspan></text>`+"\n",
		unit(leftEnd), unit(labelLine), word.Name, word.As)
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="15" font-weight="bold" text-anchor="end">%s</text>`+"\n",
		unit(rightEnd), unit(labelLine), s.Amount())
	fmt.Fprintf(b, `<path class="rail" d="M%s %sH%s" stroke="currentColor" stroke-opacity="0.45" stroke-dasharray="1 3"/>`+"\n",
		unit(leftEnd), unit(markLine), unit(rightEnd))
	drawBand(b, s)
	drawDot(b, s)
}

// drawBand draws the family's range and its numbers.
func drawBand(b *strings.Builder, s *Strip) {
	left, right := bandLeft, bandRight
	if !s.Range.Has {
		left = leftEnd
	}
	top := markLine - bandHeight/2
	if s.Range.Has || s.Range.High > 0 {
		fmt.Fprintf(b, `<rect class="band" x="%s" y="%s" width="%s" height="%s" rx="3" fill-opacity="0.22" stroke="currentColor" stroke-opacity="0.6"%s/>`+"\n",
			unit(left), unit(top), unit(right-left), unit(bandHeight), dashedUnless(s.Range.Has))
	}
	scale := func(x float64, text string) {
		fmt.Fprintf(b, `<text class="quiet" x="%s" y="%s" font-size="12.5" text-anchor="middle">%s</text>`+"\n", unit(x), unit(scaleLine), text)
	}
	if !s.Range.Has {
		scale(bandRight, s.Span())
		return
	}
	fmt.Fprintf(b, `<path class="centre" d="M%s %sV%s" stroke="currentColor" stroke-opacity="0.6"/>`+"\n",
		unit(bandMiddle), unit(top), unit(top+bandHeight))
	scale(bandLeft, words.Millilitres(s.Range.Low))
	scale(bandMiddle, words.Millilitres(s.Range.Centre))
	scale(bandRight, words.Millilitres(s.Range.High)+" mL")
}

func dashedUnless(has bool) string {
	if has {
		return ""
	}
	return ` stroke-dasharray="3 3"`
}

// drawDot draws the drink and its plus-or-minus.
func drawDot(b *strings.Builder, s *Strip) {
	x, beyond := s.at(s.ML)
	if low, _ := s.at(math.Max(0, s.ML-s.Range.PlusMinus)); s.Range.PlusMinus > 0 && !beyond {
		high, _ := s.at(s.ML + s.Range.PlusMinus)
		fmt.Fprintf(b, `<path class="whisker" d="M%[1]s %[2]sH%[3]sM%[1]s %[4]sV%[5]sM%[3]s %[4]sV%[5]s" stroke="currentColor" stroke-width="2" fill="none"/>`+"\n",
			unit(low), unit(markLine), unit(high), unit(markLine-tickHeight), unit(markLine+tickHeight))
	}
	fill := `class="dot"`
	if !s.within() {
		fill = `class="dot out" fill="#fff"`
	}
	if !beyond {
		fmt.Fprintf(b, `<circle %s cx="%s" cy="%s" r="%s" stroke="currentColor" stroke-width="2.5"/>`+"\n", fill, unit(x), unit(markLine), unit(dotRadius))
		return
	}
	back := dotRadius * 2
	if x > bandMiddle {
		back = -back
	}
	fmt.Fprintf(b, `<path %s d="M%s %sl%s %sv%sz" stroke="currentColor" stroke-width="2.5" stroke-linejoin="round"/>`+"\n",
		fill, unit(x), unit(markLine), unit(back), unit(-dotRadius), unit(2*dotRadius))
}

// stripsSentence describes the drawing in a sentence.
func stripsSentence(strips []Strip) string {
	var out []string
	for i := range strips {
		if !strips[i].within() {
			out = append(out, say.It("draw.axis-is", "Axis", strings.ToLower(words.Axes()[strips[i].Axis].Name), "Place", strips[i].Place()))
		}
	}
	if len(out) == 0 {
		return say.It("draw.all-in-range")
	}
	return say.It("draw.out-of-range", "Axes", words.Sentence(words.List(out)))
}
