package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// ring is the radius of a glass's inside at a height. Between two rings the wall is
// straight.
type ring struct{ height, radius float64 }

// shape is the shape of a glass, in units of the drawing. The height of the drink is
// computed from its volume, for any shape.
type shape struct {
	bowl   []ring
	stem   float64 // 0 for a glass without a stem
	handle bool
}

// shapes are the usual shapes of the trade's glasses: common practice, no source. Others
// are drawn as a tumbler.
var shapes = map[string]shape{
	"coupe":               {bowl: []ring{{0, 1}, {5, 20}, {12, 34}, {22, 43}, {34, 46}}, stem: 52},
	"large coupe":         {bowl: []ring{{0, 1}, {6, 21}, {14, 36}, {27, 45}, {43, 48}}, stem: 52},
	"Nick-and-Nora glass": {bowl: []ring{{0, 1}, {7, 17}, {18, 26}, {36, 31}, {56, 30}}, stem: 48},
	"wine glass":          {bowl: []ring{{0, 1}, {7, 18}, {22, 33}, {40, 37}, {58, 34}, {72, 29}}, stem: 46},
	"flute":               {bowl: []ring{{0, 1}, {12, 10}, {40, 16}, {86, 17}}, stem: 36},
	"rocks glass":         {bowl: []ring{{0, 34}, {68, 39}}},
	"highball glass":      {bowl: []ring{{0, 24}, {112, 28}}},
	"collins glass":       {bowl: []ring{{0, 22}, {124, 25}}},
	"julep cup":           {bowl: []ring{{0, 26}, {86, 40}}},
	"mug":                 {bowl: []ring{{0, 32}, {78, 34}}, handle: true},
	"cocktail glass":      {bowl: []ring{{0, 1}, {52, 46}}, stem: 50},
	"sour glass":          {bowl: []ring{{0, 1}, {9, 18}, {30, 25}, {62, 28}}, stem: 44},
	"double rocks glass":  {bowl: []ring{{0, 36}, {74, 42}}},
	"fizz glass":          {bowl: []ring{{0, 22}, {100, 26}}},
	"balloon glass":       {bowl: []ring{{0, 1}, {8, 26}, {26, 44}, {46, 48}, {70, 40}, {80, 37}}, stem: 46},
	"snifter":             {bowl: []ring{{0, 1}, {8, 28}, {26, 42}, {44, 42}, {72, 28}}, stem: 26},
	"copper mug":          {bowl: []ring{{0, 34}, {92, 36}}, handle: true},
	"hurricane glass":     {bowl: []ring{{0, 14}, {14, 26}, {40, 32}, {70, 25}, {96, 30}, {108, 34}}, stem: 20},
	"tiki mug":            {bowl: []ring{{0, 28}, {112, 33}}},
	"pint glass":          {bowl: []ring{{0, 26}, {122, 38}}},
	"punch cup":           {bowl: []ring{{0, 22}, {16, 34}, {50, 38}}, handle: true},
	"cordial glass":       {bowl: []ring{{0, 1}, {6, 10}, {46, 15}}, stem: 40},
	"shot glass":          {bowl: []ring{{0, 15}, {50, 19}}},
}

// tumbler is drawn for a glass that is not in shapes.
var tumbler = shape{bowl: []ring{{0, 30}, {90, 34}}}

// Sizes of the drawing, in its own units.
const (
	glassWidth  = 300.0
	glassHeight = 152.0
	glassMiddle = 62.0
	glassFloor  = 142.0 // y of the surface that it stands on
	glassBase   = 6.0   // thickness of the base without a stem
	glassLabel  = 132.0 // x of the text
)

// top returns the height of the brim above the lowest point of the inside.
func (s *shape) top() float64 { return s.bowl[len(s.bowl)-1].height }

// radiusAt returns the radius of the inside at a height.
func (s *shape) radiusAt(height float64) float64 {
	for i := 1; i < len(s.bowl); i++ {
		a, b := s.bowl[i-1], s.bowl[i]
		if height <= b.height {
			return a.radius + (b.radius-a.radius)*(height-a.height)/(b.height-a.height)
		}
	}
	return s.bowl[len(s.bowl)-1].radius
}

// volumeTo returns the volume of the inside up to a height, over π: the sum of frusta.
func (s *shape) volumeTo(height float64) float64 {
	var sum float64
	for i := 1; i < len(s.bowl); i++ {
		a := s.bowl[i-1]
		if height <= a.height {
			break
		}
		h := math.Min(height, s.bowl[i].height)
		r := s.radiusAt(h)
		sum += (h - a.height) / 3 * (a.radius*a.radius + a.radius*r + r*r)
	}
	return sum
}

// heightOf returns the height up to which a share of the glass's volume fills it, at most
// that of the brim.
func (s *shape) heightOf(share float64) float64 {
	want := finite(math.Max(0, math.Min(share, 1)), 0) * s.volumeTo(s.top())
	return mix.Bisect(0, s.top(), func(height float64) bool { return s.volumeTo(height) < want })
}

// GlassSVG draws a drink in its glass as an SVG element: its colour, the ice of its
// service, and the wash line with the room above it in millilitres. Text beside it says
// the same, so that the drawing needs no colour.
func GlassSVG(id string, l *kitchen.Look) htmltemplate.HTML {
	s, ok := shapes[l.Filling.Glass.Name]
	if !ok {
		s = tumbler
	}
	bottom := glassFloor - glassBase
	if s.stem > 0 {
		bottom = glassFloor - s.stem
	}
	level := s.heightOf(l.Filling.Level)
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	fmt.Fprintf(&b, `<svg class="glass" role="img" aria-labelledby="%[1]s-title" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" font-size="13.5" fill="currentColor">`+"\n<title id=\"%[1]s-title\">%[4]s</title>\n",
		esc(id), unit(glassWidth), unit(glassHeight), esc(GlassSentence(l)))
	fmt.Fprintf(&b, `<path class="liquid" d="%s" fill="%s"/>`+"\n", s.outline(bottom, level), l.Swatch.Hex())
	drawIce(&b, &s, l.Service, bottom, level)
	drawVessel(&b, &s, bottom)
	drawWashLine(&b, &s, l, bottom-level)
	b.WriteString("</svg>\n")
	return htmltemplate.HTML(b.String())
}

// outline returns the inside up to a height, as a closed path.
func (s *shape) outline(bottom, level float64) string {
	var left, right []string
	add := func(height float64) {
		r := s.radiusAt(height)
		left = append(left, unit(glassMiddle-r)+" "+unit(bottom-height))
		right = append([]string{unit(glassMiddle+r) + " " + unit(bottom-height)}, right...)
	}
	for _, x := range s.bowl {
		if x.height < level {
			add(x.height)
		}
	}
	add(level)
	return "M" + strings.Join(append(left, right...), "L") + "z"
}

// drawVessel draws the glass.
func drawVessel(b *strings.Builder, s *shape, bottom float64) {
	fmt.Fprintf(b, `<path class="vessel" d="%s`, s.outline(bottom, s.top()))
	switch {
	case s.stem > 0:
		fmt.Fprintf(b, "M%s %sV%sM%s %[3]sh52", unit(glassMiddle), unit(bottom), unit(glassFloor), unit(glassMiddle-26))
	default:
		r := s.bowl[0].radius
		fmt.Fprintf(b, "M%s %sv%sh%sv-%[3]s", unit(glassMiddle-r), unit(bottom), unit(glassBase), unit(2*r))
	}
	if s.handle {
		fmt.Fprintf(b, "M%s %sc26 -4 26 -46 1 -42", unit(glassMiddle+s.bowl[0].radius), unit(bottom-12))
	}
	b.WriteString(`" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" stroke-linecap="round"/>` + "\n")
}

// drawIce draws the ice of a service: cubes that float with a tenth above the drink, or
// crushed ice heaped above the brim.
func drawIce(b *strings.Builder, s *shape, service flavor.Service, bottom, level float64) {
	piece := func(x, y, side, turn float64) {
		fmt.Fprintf(b, `<path d="M-%[1]s-%[1]sh%[2]sv%[2]sh-%[2]sz" transform="translate(%[3]s %[4]s)rotate(%[5]s)"/>`+"\n", unit(side/2), unit(side), unit(x), unit(y), unit(turn))
	}
	b.WriteString(`<g class="ice" fill="#fff" fill-opacity="0.55" stroke="currentColor" stroke-opacity="0.5" stroke-linejoin="round">` + "\n")
	defer b.WriteString("</g>\n")
	switch service {
	case flavor.Rocks, flavor.Long:
		side := 0.8 * s.bowl[0].radius
		if service == flavor.Long {
			side = 1.2 * s.bowl[0].radius
		}
		turn := 9.0
		for y := level + side/10 - side/2; y > side/2; y -= side + 3 {
			if service == flavor.Rocks { // two side by side
				piece(glassMiddle-side/2-3, bottom-y, side, turn)
				piece(glassMiddle+side/2+3, bottom-y+3, side, -turn)
			} else {
				piece(glassMiddle, bottom-y, side, turn)
			}
			turn = -turn
		}
	case flavor.Crushed:
		const side = 10.0
		for row, y := 0, s.top()+side/2; y > side; row, y = row+1, y-side-1 {
			r := s.radiusAt(math.Min(y, s.top())) - side/2
			if y > s.top() {
				r *= 0.7
			}
			for x := -r + side/2*float64(row%2); x <= r; x += side + 2 {
				piece(glassMiddle+x, bottom-y, side, float64(17*((row+int(x))%5)))
			}
		}
	}
}

// drawWashLine draws the level of the drink, and labels the room above it.
func drawWashLine(b *strings.Builder, s *shape, l *kitchen.Look, y float64) {
	esc := htmltemplate.HTMLEscapeString
	f := &l.Filling
	first := say.It("draw.to-the-rim", "ML", words.Millilitres(f.WashML))
	switch {
	case full(f):
		first = say.It("draw.full-to-the-rim")
	case f.SpillML > 0:
		first = say.It("draw.over-by", "ML", words.Millilitres(f.SpillML))
	}
	fmt.Fprintf(b, `<path class="wash" d="M%s %sH%s" stroke="currentColor" stroke-width="1.5" stroke-dasharray="4 3"/>`+"\n", unit(glassMiddle+s.radiusAt(s.top())*0.3), unit(y), unit(glassLabel-4))
	at := math.Min(math.Max(y+4.5, 14), glassHeight-42)
	for i, line := range []string{first, words.Sentence(l.Swatch.Words()), say.It("draw.glass-of", "Glass", words.SentenceStart(f.Glass.Name), "ML", words.Millilitres(f.Glass.ML))} {
		weight, class := "", ` class="quiet"`
		if i == 0 {
			weight, class = ` font-weight="bold"`, ""
		}
		line = strings.TrimSuffix(line, ".")
		fmt.Fprintf(b, `<text%s x="%s" y="%s"%s>%s</text>`+"\n", class, unit(glassLabel), unit(at+18*float64(i)), weight, esc(line))
	}
}

// full reports whether a glass is full to within a millilitre, which nobody can pour
// exactly.
func full(f *mix.FillLevel) bool { return f.WashML < 1 && f.SpillML < 1 }

// GlassSentence describes how full the glass is.
func GlassSentence(l *kitchen.Look) string {
	f := &l.Filling
	ice := say.It("draw.without-ice")
	switch l.Service {
	case flavor.Rocks, flavor.Long:
		ice = say.It("draw.over-ice")
	case flavor.Crushed:
		ice = say.It("draw.over-crushed-ice")
	case flavor.Hot:
		ice = say.It("draw.hot")
	}
	stands := say.It("draw.under-the-rim", "ML", words.Millilitres(f.WashML))
	switch {
	case full(f):
		stands = say.It("draw.full-to-the-rim")
	case f.SpillML > 0:
		stands = say.It("draw.runs-over", "ML", words.Millilitres(f.SpillML))
	}
	return words.Sentence(say.It("draw.in-its-glass", "Colour", l.Swatch.Words(), "Ice", ice, "ML", words.Millilitres(f.Glass.ML), "Glass", f.Glass.Name, "Stands", stands))
}
