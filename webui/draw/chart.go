package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/webui/say"
)

// PlaceKind is the role of an ingredient on the map, relative to the chosen drink.
type PlaceKind int

// The kinds, each with a mark of a different shape.
const (
	kindStock   PlaceKind = iota // a hollow disc
	KindDry                      // a disc with a dashed outline
	KindPoured                   // a full disc
	KindMissing                  // a full square
	KindCover                    // a double ring
	KindChosen                   // a full disc
	KindNear                     // a double ring
)

// ringed reports whether the mark has a second ring.
func (k PlaceKind) ringed() bool { return k == KindCover || k == KindNear }

// Words are the words for the kind; "" for an ingredient that is only in stock.
func (k PlaceKind) Words() string {
	switch k {
	case KindDry:
		return say.It("draw.run-dry")
	case KindPoured:
		return say.It("draw.poured")
	case KindMissing:
		return say.It("draw.ran-out")
	case KindCover:
		return say.It("draw.in-a-cover")
	case KindChosen:
		return say.It("draw.chosen")
	case KindNear:
		return say.It("draw.like-it")
	}
	return ""
}

// Place is one ingredient on the map.
type Place struct {
	Number int
	Name   string
	Kind   PlaceKind
	X, Y   float64 // in any unit, the same for both; x grows to the right, y upwards
}

// Marked reports whether the place belongs to the chosen drink, or is the chosen bottle
// or like it.
func (p *Place) Marked() bool { return p.Kind >= KindPoured }

// Chart is the map: its places, and the labels at the ends of its axes.
type Chart struct {
	Title, Sentence       string
	Right, Left, Up, Down string
	Places                []Place
}

// Sizes of the map, in units of the drawing.
const (
	chartWidth  = 720.0
	chartHeight = 600.0
	chartEdge   = 46.0 // margin for the labels of the axes
	discRadius  = 9.5
	discGap     = 2.0
	nameSize    = 11.0
	nameWide    = 0.56 // mean width of a letter over the font size, with some reserve
	boldWide    = 1.14 // width of bold letters over that of normal ones
	relaxations = 400
)

// spot is a place in units of the drawing: its true position and that of its mark.
type spot struct {
	*Place
	trueX, trueY float64
	x, y         float64
}

// ChartSVG draws the map as an SVG element. Each mark contains a number, for a key beside
// the drawing, and has its name beside it where there is room. Overlapping marks are
// moved apart, with a line to the true position. Kinds differ by shape, so that the
// drawing needs no colour.
func ChartSVG(id string, c Chart) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	fmt.Fprintf(&b, `<svg class="map" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" fill="currentColor">`+"\n",
		esc(id), unit(chartWidth), unit(chartHeight))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(c.Title), esc(c.Sentence))
	drawAxes(&b, &c)
	spots := spotsOf(c.Places)
	for i := range spots {
		drawLeader(&b, &spots[i])
	}
	for i := range spots {
		drawMark(&b, &spots[i])
	}
	for _, l := range labelsOf(spots) {
		drawLabel(&b, &l)
	}
	b.WriteString("</svg>\n")
	return htmltemplate.HTML(b.String())
}

// drawAxes draws the frame and the labels of the axes.
func drawAxes(b *strings.Builder, c *Chart) {
	esc := htmltemplate.HTMLEscapeString
	middleX, middleY := chartWidth/2, chartHeight/2
	fmt.Fprintf(b, `<path class="rail" d="M%s %sH%sM%s %sV%s" stroke="currentColor" stroke-opacity="0.4" stroke-dasharray="1 4"/>`+"\n",
		unit(chartEdge), unit(middleY), unit(chartWidth-chartEdge), unit(middleX), unit(chartEdge), unit(chartHeight-chartEdge))
	end := func(x, y float64, anchor, turn, text string) {
		fmt.Fprintf(b, `<text class="quiet" x="%s" y="%s" font-size="13" font-style="italic" text-anchor="%s"%s>%s</text>`+"\n", unit(x), unit(y), anchor, turn, esc(text))
	}
	end(middleX, 16, "middle", "", "↑ "+c.Up)
	end(middleX, chartHeight-6, "middle", "", "↓ "+c.Down)
	end(14, middleY, "middle", fmt.Sprintf(` transform="rotate(-90 14 %s)"`, unit(middleY)), "← "+c.Left)
	end(chartWidth-8, middleY, "middle", fmt.Sprintf(` transform="rotate(-90 %s %s)"`, unit(chartWidth-8), unit(middleY)), c.Right+" →")
}

// spotsOf scales the places into the frame, with the same scale on both axes, and moves
// marks apart. Coordinates that are NaN or infinite are put in the middle.
func spotsOf(places []Place) []spot {
	spots := make([]spot, len(places))
	lowX, highX, lowY, highY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for i := range places {
		spots[i].Place = &places[i]
		lowX, highX = math.Min(lowX, places[i].X), math.Max(highX, places[i].X)
		lowY, highY = math.Min(lowY, places[i].Y), math.Max(highY, places[i].Y)
	}
	inner := chartEdge + discRadius
	scale := math.Min((chartWidth-2*inner)/(highX-lowX), (chartHeight-2*inner)/(highY-lowY))
	for i := range spots {
		s := &spots[i]
		s.trueX = finite(chartWidth/2+scale*(s.X-(lowX+highX)/2), chartWidth/2)
		s.trueY = finite(chartHeight/2-scale*(s.Y-(lowY+highY)/2), chartHeight/2)
		s.x, s.y = s.trueX, s.trueY
	}
	for range relaxations {
		if !apart(spots) {
			break
		}
	}
	return spots
}

func finite(v, otherwise float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return otherwise
	}
	return v
}

// apart moves overlapping marks half the way apart, and reports whether there were any.
func apart(spots []spot) bool {
	moved := false
	const want = 2*discRadius + discGap
	for i := range spots {
		for k := i + 1; k < len(spots); k++ {
			a, b := &spots[i], &spots[k]
			dx, dy := b.x-a.x, b.y-a.y
			d := math.Hypot(dx, dy)
			if d >= want-0.05 {
				continue
			}
			push := (want - d) / 2
			if d < 1e-6 { // same position: move them by their order
				dx, dy, d = math.Cos(float64(k)), math.Sin(float64(k)), 1
			}
			moved = true
			a.move(-dx/d*push, -dy/d*push)
			b.move(dx/d*push, dy/d*push)
		}
	}
	return moved
}

// move moves a mark within the frame.
func (s *spot) move(dx, dy float64) {
	const inner = chartEdge
	s.x = math.Min(math.Max(s.x+dx, inner), chartWidth-inner)
	s.y = math.Min(math.Max(s.y+dy, inner), chartHeight-inner)
}

// drawLeader draws the line from a moved mark to its true position.
func drawLeader(b *strings.Builder, s *spot) {
	if math.Hypot(s.x-s.trueX, s.y-s.trueY) < discRadius {
		return
	}
	fmt.Fprintf(b, `<path class="leader" d="M%s %sL%s %s" stroke="currentColor" stroke-opacity="0.45"/><circle cx="%[3]s" cy="%[4]s" r="1.5" fill-opacity="0.6"/>`+"\n",
		unit(s.x), unit(s.y), unit(s.trueX), unit(s.trueY))
}

func drawMark(b *strings.Builder, s *spot) {
	class, number, fill, line := `class="place"`, "currentColor", `fill="#fff"`, ""
	switch s.Kind {
	case KindPoured, KindMissing, KindChosen:
		class, number, fill = `class="place on"`, "#fff", `fill="#000"`
	case KindDry:
		line = ` stroke-dasharray="3 2"`
	}
	fmt.Fprintf(b, `<g %s><title>%s</title>`, class, htmltemplate.HTMLEscapeString(strings.TrimSuffix(s.Name+", "+s.Kind.Words(), ", ")))
	if s.Kind == KindMissing {
		fmt.Fprintf(b, `<rect class="disc" x="%s" y="%s" width="%[3]s" height="%[3]s" %s stroke="currentColor"/>`,
			unit(s.x-discRadius), unit(s.y-discRadius), unit(2*discRadius), fill)
	} else {
		fmt.Fprintf(b, `<circle class="disc" cx="%s" cy="%s" r="%s" %s stroke="currentColor" stroke-width="1.2"%s/>`,
			unit(s.x), unit(s.y), unit(discRadius), fill, line)
	}
	if s.Kind.ringed() {
		fmt.Fprintf(b, `<circle class="ring" cx="%s" cy="%s" r="%s" fill="none" stroke="currentColor" stroke-width="2.5"/>`, unit(s.x), unit(s.y), unit(discRadius+3.5))
	}
	fmt.Fprintf(b, `<text class="number" x="%s" y="%s" font-size="9.5" text-anchor="middle" fill="%s">%d</text></g>`+"\n", unit(s.x), unit(s.y+3.3), number, s.Number)
}
