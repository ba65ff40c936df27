package draw

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"strings"

	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Sizes of the bars, in units of the drawing.
const (
	barsWidth = 300.0
	barRow    = 34.0
	barLeft   = 84.0
	barRight  = 262.0
	barHeight = 10.0
	// leastLength is the least value for the full length of a bar, so that tiny values
	// are drawn short.
	leastLength = 0.05
)

// Pair is a value before and after.
type Pair struct {
	Name          string
	Before, After float64
}

// PairsSVG draws two bars for each pair as an SVG element: above, hollow, the value
// before; below, full, the value after. Numbers have a fixed number of decimals. It needs
// no colour.
func PairsSVG(id, title string, decimals int, pairs []Pair) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	said := make([]string, len(pairs))
	longest := leastLength
	for i, x := range pairs {
		said[i] = say.It("draw.before-and-after", "Name", x.Name, "Before", words.Figure(x.Before, decimals), "After", words.Figure(x.After, decimals))
		longest = math.Max(longest, math.Max(x.Before, x.After))
	}
	fmt.Fprintf(&b, `<svg class="bars" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" font-size="13" fill="currentColor">`+"\n",
		esc(id), unit(barsWidth), unit(barRow*float64(len(pairs))))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(title), esc(words.Sentence(strings.Join(said, "; "))))
	for i, x := range pairs {
		top := barRow * float64(i)
		fmt.Fprintf(&b, `<text x="0" y="%s">%s</text>`+"\n", unit(top+20), esc(x.Name))
		for k, v := range []float64{x.Before, x.After} {
			y, wide := top+4+float64(k)*(barHeight+2), (barRight-barLeft)*v/longest
			shape := `fill="none" stroke="currentColor"`
			if k == 1 {
				shape = `stroke="currentColor"`
			}
			fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" %s/><text x="%s" y="%s" font-size="11">%s</text>`+"\n",
				unit(barLeft), unit(y), unit(wide), unit(barHeight), shape, unit(barLeft+wide+5), unit(y+9.5), words.Figure(v, decimals))
		}
	}
	b.WriteString("</svg>\n")
	return htmltemplate.HTML(b.String())
}
