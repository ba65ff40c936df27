package part

import (
	htmltemplate "html/template"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/template"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/words"
)

// Drawing is the drawing and the same as a table.
type Drawing struct {
	Title string
	SVG   htmltemplate.HTML
	Rows  []stripRow
	Words [template.NumAxes]words.Axis
}

// stripRow is a strip in words.
type stripRow struct{ Axis, As, Amount, Span, Place string }

// DrawingOf draws a drink beside its family; nil where the bar knows no range.
// The id tells the drawings of one page apart.
func DrawingOf(bar behind.Bar, id, title string, s *flavor.Spec, amounts template.Equivalents, family string) *Drawing {
	ranges, ok := bar.Ranges(s, family)
	if !ok {
		return nil
	}
	if f, ok := bar.Family(family); ok {
		title += ", " + f.Name
	}
	var strips []draw.Strip
	for i, a := range template.Axes() {
		strips = append(strips, draw.Strip{Axis: a, ML: amounts[a], Range: ranges[i]})
	}
	return StripsView(id, title, strips)
}

// ScoredDrawing draws a drink that was scored beside the family it fits best.
func ScoredDrawing(bar behind.Bar, s *flavor.Spec, r *balance.Result) *Drawing {
	return DrawingOf(bar, "strips", "The drink beside proven drinks of its family", s, r.Judgement.Equivalents, r.Judgement.Fits[0].ID)
}

// StripsView is strips drawn, and as a table.
func StripsView(id, title string, strips []draw.Strip) *Drawing {
	v := &Drawing{Title: title, SVG: draw.StripsSVG(id, title, strips), Words: words.Axes}
	for i := range strips {
		s := &strips[i]
		v.Rows = append(v.Rows, stripRow{words.Axes[s.Axis].Name, words.Axes[s.Axis].As, s.Amount(), s.Span(), s.Place()})
	}
	return v
}
