package part

import (
	htmltemplate "html/template"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Drawing is a drawing, and the same data as a table.
type Drawing struct {
	Title string
	SVG   htmltemplate.HTML
	Also  string // why the score differs from that in this family alone; "" if it does not
	Rows  []stripRow
	Words [ratio.NumAxes]words.Axis
}

// stripRow is a strip as a row of the table.
type stripRow struct{ Axis, As, Amount, Span, Place string }

// DrawingOf draws a drink beside its family; nil if the bar knows no range. id must be
// unique on the page.
func DrawingOf(bar behind.Bar, id, title string, s *flavor.Spec, amounts ratio.Equivalents, family string) *Drawing {
	ranges, ok := bar.Ranges(s, family)
	if !ok {
		return nil
	}
	if f, ok := bar.Family(family); ok {
		title = say.It("part.beside-this-family", "Title", title, "Family", f.Name)
	}
	var strips []draw.Strip
	for i, a := range ratio.Axes() {
		strips = append(strips, draw.Strip{Axis: a, ML: amounts[a], Range: ranges[i]})
	}
	return StripsView(id, title, strips)
}

// ScoredDrawing draws a scored drink beside the family that it fits best.
func ScoredDrawing(bar behind.Bar, s *flavor.Spec, r *balance.Result) *Drawing {
	fits := r.Judgement.Fits
	v := DrawingOf(bar, "strips", say.It("part.beside-its-family"), s, r.Judgement.Equivalents, fits[0].ID)
	if v != nil {
		v.Also = alsoCounted(r.Judgement.Ratio, fits)
	}
	return v
}

// alsoCounted names the other family that affected a score, if the score and the most
// probable family disagree on whether the drink is balanced.
func alsoCounted(score float64, fits []weigh.Fit) string {
	if len(fits) < 2 || (score >= weigh.BalancedFrom) == (fits[0].Score >= weigh.BalancedFrom) {
		return ""
	}
	return say.It("part.also-counted", "Family", fits[0].Name, "Score", words.Points(fits[0].Score),
		"Other", fits[1].Name, "Likely", words.Percent(fits[1].Probability), "There", words.Points(fits[1].Score))
}

// StripsView returns strips as a drawing and as a table.
func StripsView(id, title string, strips []draw.Strip) *Drawing {
	axes := words.Axes()
	v := &Drawing{Title: title, SVG: draw.StripsSVG(id, title, strips), Words: axes}
	for i := range strips {
		s := &strips[i]
		v.Rows = append(v.Rows, stripRow{axes[s.Axis].Name, axes[s.Axis].As, s.Amount(), s.Span(), s.Place()})
	}
	return v
}
