package shape

import (
	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/ratio"
)

// TemplatesAnswer is the families of drinks.
type TemplatesAnswer struct {
	Templates []Template `json:"templates"`
}

// Template is a family of drinks. Ratios are over its axes, in equivalents. The fitted
// ratio is scaled to the same sum as the published one, so that the two compare.
type Template struct {
	ID          string             `json:"id"`
	Name        string             `json:"name"`
	Axes        []string           `json:"axes" doc:"The parts it has, in order"`
	Ratio       map[string]float64 `json:"ratio" doc:"As published or in common practice, by axis"`
	RatioFitted map[string]float64 `json:"ratio_fitted" doc:"As proven drinks have it, by axis, of the same sum"`
	Source      string             `json:"source" doc:"Where the ratio comes from"`
	Drinks      int                `json:"drinks" doc:"How many proven drinks it was fitted to"`
	Usual       string             `json:"usual" doc:"How its two usual faults taste"`
}

// AnswerTemplates lists the families.
func AnswerTemplates(house *service.Snapshot) (*TemplatesAnswer, error) {
	families, fitted := house.Set.Families()
	out := &TemplatesAnswer{Templates: []Template{}}
	for i := range families {
		f := &families[i]
		centre, err := house.Set.Centre(f.ID)
		if err != nil {
			return nil, err
		}
		var sum float64
		for _, v := range f.Ratio {
			sum += v
		}
		t := Template{ID: f.ID, Name: f.Name, Axes: figure.List(f.Axes, ratio.Axis.String), Ratio: map[string]float64{},
			RatioFitted: map[string]float64{}, Source: f.Source, Drinks: fitted[i].Drinks, Usual: f.Usual}
		for a, axis := range f.Axes {
			t.Ratio[axis.String()] = figure.Round(f.Ratio[a], figure.ML)
			t.RatioFitted[axis.String()] = figure.Round(centre[a]*sum, figure.ML)
		}
		out.Templates = append(out.Templates, t)
	}
	return out, nil
}
