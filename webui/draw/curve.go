package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Played is one round of a curve: its size in noticeable steps, and whether the answer
// was right.
type Played struct {
	Steps float64
	Right bool
}

// Curve is the course of a drill, the first round first.
type Curve struct {
	Title  string
	Rounds []Played
	Tells  float64 // steps at which seven in ten answers are right; 0 if unknown
}

// Sizes of the drawing, in its own units.
const (
	curveWidth  = 330.0
	curveHeight = 132.0
	curveLeft   = 34.0
	curveRight  = 322.0
	curveTop    = 10.0
	curveBottom = 104.0
	curveDot    = 4.0
)

// CurveSVG draws a curve as an SVG element: a mark for each round from left to right,
// higher for a larger and so easier one. The vertical axis is logarithmic, since
// differences are noticed by ratio. A full mark is a right answer, a hollow one a wrong
// answer; a dashed line marks the smallest step noticed.
func CurveSVG(id string, c *Curve) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	c = c.sound()
	fmt.Fprintf(&b, `<svg class="curve" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" font-size="12" fill="currentColor">`+"\n",
		esc(id), unit(curveWidth), unit(curveHeight))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(c.Title), esc(curveSentence(c)))
	low, high := c.ends()
	at := func(steps float64) float64 {
		return curveBottom - (curveBottom-curveTop)*math.Log(steps/low)/math.Log(high/low)
	}
	for _, steps := range []float64{low, math.Sqrt(low * high), high} {
		fmt.Fprintf(&b, `<path d="M%s %sH%s" stroke="currentColor" stroke-opacity="0.3" stroke-dasharray="1 4"/><text class="quiet" x="%s" y="%s" text-anchor="end">%s</text>`+"\n",
			unit(curveLeft), unit(at(steps)), unit(curveRight), unit(curveLeft-6), unit(at(steps)+4), stepsWord(steps))
	}
	if c.Tells > 0 {
		fmt.Fprintf(&b, `<path class="tells" d="M%s %sH%s" stroke="currentColor" stroke-width="1.5" stroke-dasharray="6 4"/>`+"\n", unit(curveLeft), unit(at(c.Tells)), unit(curveRight))
	}
	c.drawRounds(&b, at)
	fmt.Fprintf(&b, `<text class="quiet" x="%s" y="%s">%[4]s</text><text class="quiet" x="%[3]s" y="%[2]s" text-anchor="end">%[5]s</text>`+"\n</svg>\n",
		unit(curveLeft), unit(curveHeight-8), unit(curveRight), esc(say.It("draw.curve-first")), esc(say.It("draw.curve-last", "Rounds", len(c.Rounds))))
	return htmltemplate.HTML(b.String())
}

// drawRounds draws the line between the rounds and their marks.
func (c *Curve) drawRounds(b *strings.Builder, at func(float64) float64) {
	x := func(i int) float64 {
		if len(c.Rounds) == 1 {
			return (curveLeft + curveRight) / 2
		}
		return curveLeft + curveDot + 2 + (curveRight-curveLeft-2*curveDot-2)*float64(i)/float64(len(c.Rounds)-1)
	}
	var path, marks strings.Builder
	for i, r := range c.Rounds {
		command := "L"
		if i == 0 {
			command = "M"
		}
		y := at(r.Steps)
		fmt.Fprintf(&path, "%s%s %s", command, unit(x(i)), unit(y))
		class := `class="dot"`
		if !r.Right {
			class = `class="dot out"`
		}
		fmt.Fprintf(&marks, `<circle %s cx="%s" cy="%s" r="%s" stroke="currentColor" stroke-width="1.5"/>`, class, unit(x(i)), unit(y), unit(curveDot))
	}
	fmt.Fprintf(b, `<path d="%s" fill="none" stroke="currentColor" stroke-opacity="0.55"/>`+"\n%s\n", path.String(), marks.String())
}

// least is the smallest size that is drawn, in steps.
const least = 0.01

// sound returns the curve with every size finite and at least [least].
func (c *Curve) sound() *Curve {
	out := *c
	out.Tells = math.Max(finite(c.Tells, 0), 0)
	out.Rounds = make([]Played, len(c.Rounds))
	for i, r := range c.Rounds {
		out.Rounds[i] = Played{math.Max(finite(r.Steps, least), least), r.Right}
	}
	return &out
}

// ends returns the sizes at the bottom and the top of the drawing: those played, and at
// least a factor of two apart.
func (c *Curve) ends() (low, high float64) {
	low, high = math.Inf(1), 0
	for _, r := range append([]Played{{Steps: c.Tells}}, c.Rounds...) {
		if r.Steps > 0 {
			low, high = math.Min(low, r.Steps), math.Max(high, r.Steps)
		}
	}
	if math.IsInf(low, 1) {
		return 1, 2
	}
	if high < 2*low {
		middle := math.Sqrt(low * high)
		low, high = middle/math.Sqrt2, middle*math.Sqrt2
	}
	return low, high
}

func stepsWord(steps float64) string {
	if steps < 1 {
		return words.Figure(steps, 2)
	}
	return words.Figure(steps, 1)
}

// curveSentence describes the drawing.
func curveSentence(c *Curve) string {
	if len(c.Rounds) == 0 {
		return say.It("draw.no-round-yet")
	}
	right := 0
	for _, r := range c.Rounds {
		if r.Right {
			right++
		}
	}
	tells := ""
	if c.Tells > 0 {
		tells = stepsWord(c.Tells)
	}
	return say.It("draw.curve", "Rounds", len(c.Rounds), "Right", right, "First", stepsWord(c.Rounds[0].Steps), "Last", stepsWord(c.Rounds[len(c.Rounds)-1].Steps), "Tells", tells)
}
