package phrasing

import (
	"math"
	"strconv"
	"strings"

	"counterpour/flavor/measure/pattern"
)

// A ratio that the pours beside it have says nothing more: "the 2:1:1. We used 50 ml cognac, 25 ml ...",
// "45 whisky, 135 soda (1:3)".

var (
	ratioBefore = pattern.Of(`(?i)(?:^|[.,;:\n–—-][ \t]*|[ \t])((?:the|a|our|it's|its)?[ \t]*(\d(?:[ \t]?[:-][ \t]?\d){1,4})(?:[ \t]+(?:ratio|spec|build|version|way|one|style))*[ \t]*[.:;,]+[ \t]*(?:(?:we|i|so|they)[ \t]+)*(?:(?:used|use|took|did|went with|that's|that is|is|being|meaning|i\.e\.)[ \t]+)?)[\d.½¼¾⅓⅔]`)
	ratioBehind = pattern.Of(`[ \t]*\([ \t]*(\d(?:[ \t]?[:-][ \t]?\d){1,4})(?:[ \t]+ratio)?[ \t]*\)`)
	// measuredPour is an amount before or behind a name.
	measuredPour = pattern.Of(`(?i)(?:^|[^\d:/.-])((?:\d+[ \t]+)?\d*[./]?\d+|\d+)[ \t]?(?:ml|cl|oz)?(?:[^\d:/-]|$)`)
)

// sameRatio is how far pours may lie off a ratio that restates them, as a share.
const sameRatio = 0.05

// restated sets such a ratio aside.
func (p *Plain) restated() {
	p.backward(ratioBefore, func(at []int) {
		if !strings.HasSuffix(strings.ToLower(p.Text[:at[2]]), "used ") && inRatio(shares(p.Text[at[4]:at[5]]), amounts(p.Text[at[3]:], false)) {
			p.Aside = append(p.Aside, strings.TrimSpace(p.Text[at[2]:at[3]]))
			p.replace(at[2], at[3], "")
		}
	})
	p.backward(ratioBehind, func(at []int) {
		ratio := shares(p.Text[at[2]:at[3]])
		if inRatio(ratio, amounts(p.Text[:at[0]], true)) {
			p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t()"))
			p.replace(at[0], at[1], "")
		}
	})
}

// shares are the numbers of a ratio.
func shares(written string) []float64 {
	var out []float64
	for n := range strings.FieldsFuncSeq(written, func(c rune) bool { return c < '0' || c > '9' }) {
		x, err := strconv.ParseFloat(n, 64)
		if err != nil {
			return nil
		}
		out = append(out, x)
	}
	return out
}

// amounts are the figures of the pours in a stretch of text; the last first if backward.
func amounts(text string, backward bool) []float64 {
	var out []float64
	for _, m := range measuredPour.FindAllStringSubmatch(text, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			continue
		}
		if backward {
			out = append([]float64{x}, out...)
		} else {
			out = append(out, x)
		}
	}
	return out
}

// inRatio reports whether amounts begin with those of a ratio; amounts that were gathered backward begin
// with its last.
func inRatio(ratio, amounts []float64) bool {
	if len(ratio) < 2 || len(amounts) < len(ratio) {
		return false
	}
	fits := func(at func(i int) float64) bool {
		for i := range ratio {
			if ratio[i] == 0 || math.Abs(at(i)/at(0)-ratio[i]/ratio[0]) > sameRatio*ratio[i]/ratio[0] {
				return false
			}
		}
		return true
	}
	n := len(ratio)
	return fits(func(i int) float64 { return amounts[i] }) || fits(func(i int) float64 { return amounts[n-1-i] })
}
