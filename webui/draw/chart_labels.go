package draw

import (
	"cmp"
	"fmt"
	htmltemplate "html/template"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// drawLabel draws a name with an outline that separates it from what is below.
func drawLabel(b *strings.Builder, l *label) {
	if l.led {
		dx, dy := l.x-l.fromX, l.y-4-l.fromY
		d := math.Hypot(dx, dy)
		fmt.Fprintf(b, `<path class="leader" d="M%s %sL%s %s" stroke="currentColor"/>`+"\n",
			unit(l.fromX+dx/d*discRadius), unit(l.fromY+dy/d*discRadius), unit(l.x), unit(l.y-4))
	}
	weight := ""
	if l.bold {
		weight = ` font-weight="bold"`
	}
	fmt.Fprintf(b, `<text class="halo" x="%s" y="%s" font-size="%s" text-anchor="%s" stroke="#fff" stroke-width="3" paint-order="stroke"%s>%s</text>`+"\n",
		unit(l.x), unit(l.y), unit(nameSize), l.anchor, weight, htmltemplate.HTMLEscapeString(l.text))
}

// label is a name beside a mark.
type label struct {
	text, anchor string
	x, y         float64
	bold         bool
	left, right  float64 // its box
	led          bool    // a line connects it with the mark
	fromX, fromY float64
}

func (l *label) top() float64 { return l.y - nameSize*0.85 }

func (l *label) bottom() float64 { return l.y + nameSize*0.25 }

// labelsOf places the names of the drink's marks in any case, and then other names from
// the edge inwards, where there is room.
func labelsOf(spots []spot) []label {
	order := make([]*spot, len(spots))
	for i := range spots {
		order[i] = &spots[i]
	}
	outness := func(s *spot) float64 { return math.Round(math.Hypot(s.x-chartWidth/2, s.y-chartHeight/2)) }
	slices.SortStableFunc(order, func(a, b *spot) int {
		if a.Marked() != b.Marked() {
			if a.Marked() {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(outness(b), outness(a)), cmp.Compare(a.Number, b.Number))
	})
	var placed []label
	for _, s := range order {
		l, free := labelFor(s, spots, placed)
		if free || l.text != "" {
			placed = append(placed, l)
		}
	}
	return placed
}

// labelFor tries the four sides of a mark for its name. For a mark of the drink it also
// looks further away. ok is false if there is no room.
func labelFor(s *spot, spots []spot, placed []label) (label, bool) {
	wide := nameWide * nameSize * float64(utf8.RuneCountInString(s.Name))
	if s.Marked() {
		wide *= boldWide
	}
	out := discRadius + 3
	if s.Kind.ringed() {
		out += 3.5
	}
	sides := []label{
		{anchor: "start", x: s.x + out, y: s.y + 4, left: s.x + out, right: s.x + out + wide},
		{anchor: "end", x: s.x - out, y: s.y + 4, left: s.x - out - wide, right: s.x - out},
		{anchor: "middle", x: s.x, y: s.y + out + 8, left: s.x - wide/2, right: s.x + wide/2},
		{anchor: "middle", x: s.x, y: s.y - out, left: s.x - wide/2, right: s.x + wide/2},
	}
	for _, l := range sides {
		l.text, l.bold = s.Name, s.Marked()
		if l.free(s, spots, placed) {
			return l, true
		}
	}
	if s.Marked() {
		return farLabel(s, wide, spots, placed)
	}
	return label{}, false
}

// farLabel looks further and further away for room, and connects the name with a line. If
// there is none, the name covers its neighbours.
func farLabel(s *spot, wide float64, spots []spot, placed []label) (label, bool) {
	for _, out := range []float64{26, 40, 56, 74, 94, 116, 140} {
		for turn := range 16 {
			angle := float64(turn) * math.Pi / 8
			l := label{text: s.Name, bold: true, led: true, fromX: s.x, fromY: s.y, x: s.x + out*math.Cos(angle), y: s.y + out*math.Sin(angle) + 4}
			if math.Cos(angle) < -1e-9 {
				l.anchor, l.left, l.right = "end", l.x-wide, l.x
			} else {
				l.anchor, l.left, l.right = "start", l.x, l.x+wide
			}
			if l.free(s, spots, placed) {
				return l, true
			}
		}
	}
	return label{text: s.Name, bold: true, anchor: "end", x: s.x - discRadius - 3, y: s.y + 4, left: s.x - discRadius - 3 - wide, right: s.x - discRadius - 3}, false
}

// free reports whether a label is within the frame and touches no mark or other label.
func (l *label) free(own *spot, spots []spot, placed []label) bool {
	if l.left < 24 || l.right > chartWidth-20 || l.top() < 20 || l.bottom() > chartHeight-20 {
		return false
	}
	for i := range spots {
		s := &spots[i]
		x, y := math.Min(math.Max(s.x, l.left), l.right), math.Min(math.Max(s.y, l.top()), l.bottom())
		if s.Number != own.Number && math.Hypot(s.x-x, s.y-y) < discRadius+1 {
			return false
		}
	}
	return !slices.ContainsFunc(placed, func(o label) bool {
		return l.left < o.right && o.left < l.right && l.top() < o.bottom() && o.top() < l.bottom()
	})
}
