package part

import (
	htmltemplate "html/template"

	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
)

// Glass is a drawing of a drink in its glass, and a sentence.
type Glass struct {
	SVG      htmltemplate.HTML
	Sentence string
}

// GlassOf draws a drink in its glass; nil if it cannot be mixed. id must be unique on the
// page.
func GlassOf(bar behind.Bar, id string, s *flavor.Spec) (*Glass, error) {
	l, err := bar.Look(s)
	if err != nil {
		if len(flavor.DataFaultsOf(err)) > 0 {
			return nil, nil
		}
		return nil, err
	}
	return &Glass{SVG: draw.GlassSVG(id, l), Sentence: draw.GlassSentence(l)}, nil
}
