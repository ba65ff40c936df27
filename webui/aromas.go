package webui

import (
	"cmp"
	"fmt"
	htmltemplate "html/template"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
)

// AromaBar is one aroma family before and after a cover, on the scale of
// [flavor.Families].
type AromaBar struct {
	Family        flavor.Family
	Before, After float64
}

// How many bars are drawn, and from what intensity on a family is told at all.
const (
	mostBars = 6
	leastBar = 0.05
)

// aromaBars picks the families that either drink has most of.
func aromaBars(before, after *flavor.Aroma) []AromaBar {
	var out []AromaBar
	for f := range flavor.NumFamilies {
		if math.Max(before[f], after[f]) >= leastBar {
			out = append(out, AromaBar{flavor.Family(f), before[f], after[f]})
		}
	}
	most := func(b AromaBar) float64 { return math.Round(1000 * math.Max(b.Before, b.After)) }
	slices.SortStableFunc(out, func(a, b AromaBar) int { return cmp.Compare(most(b), most(a)) })
	return out[:min(len(out), mostBars)]
}

// The bars, in units of the drawing.
const (
	barsWidth = 300.0
	barRow    = 34.0
	barLeft   = 84.0
	barRight  = 262.0
	barHeight = 10.0
)

// DrawAromas draws the bars as an SVG element: above, hollow, what was; below,
// full, what is. It needs no colour.
func DrawAromas(id, title string, bars []AromaBar) htmltemplate.HTML {
	pairs := make([]pair, len(bars))
	for i, x := range bars {
		pairs[i] = pair{x.Family.String(), x.Before, x.After}
	}
	return drawPairs(id, title, 1, pairs)
}

// pair is something before and after.
type pair struct {
	name          string
	before, after float64
}

// drawPairs draws two bars for each pair, the numbers with so many decimals.
func drawPairs(id, title string, decimals int, pairs []pair) htmltemplate.HTML {
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	said := make([]string, len(pairs))
	longest := leastBar
	for i, x := range pairs {
		said[i] = fmt.Sprintf("%s %s before, %s after", x.name, figure(x.before, decimals), figure(x.after, decimals))
		longest = math.Max(longest, math.Max(x.before, x.after))
	}
	fmt.Fprintf(&b, `<svg class="bars" role="img" aria-labelledby="%[1]s-title %[1]s-desc" viewBox="0 0 %[2]s %[3]s" xmlns="http://www.w3.org/2000/svg" font-family="inherit" font-size="13" fill="currentColor">`+"\n",
		esc(id), unit(barsWidth), unit(barRow*float64(len(pairs))))
	fmt.Fprintf(&b, "<title id=\"%[1]s-title\">%[2]s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", esc(id), esc(title), esc(sentence(strings.Join(said, "; "))))
	for i, x := range pairs {
		top := barRow * float64(i)
		fmt.Fprintf(&b, `<text x="0" y="%s">%s</text>`+"\n", unit(top+20), esc(x.name))
		for k, v := range []float64{x.before, x.after} {
			y, wide := top+4+float64(k)*(barHeight+2), (barRight-barLeft)*v/longest
			shape := `fill="none" stroke="currentColor"`
			if k == 1 {
				shape = `stroke="currentColor"`
			}
			fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" %s/><text x="%s" y="%s" font-size="11">%s</text>`+"\n",
				unit(barLeft), unit(y), unit(wide), unit(barHeight), shape, unit(barLeft+wide+5), unit(y+9.5), figure(v, decimals))
		}
	}
	b.WriteString("</svg>\n")
	return htmltemplate.HTML(b.String())
}
