package training

import (
	"math"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/ratio"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// flightView is the page of a tasting flight.
type flightView struct {
	Form     flightForm
	Drinks   []form.Option
	Axes     []form.Option
	Builds   []form.Option
	Troubles []string
	Plan     *flightPlan
}

// flightPlan is a flight as it is set up.
type flightPlan struct {
	Name      string
	Task      string // what the tasters do
	Alcohol   string // that one taster takes in
	Out       string // which of its bottles have run out
	Cautions  []string
	Care      []behind.Caution
	Allergens part.Allergens
	Servings  string // of a batch
	Builds    []buildView
	Tasters   []tasterView
	Other     string // the same with other codes
	Unit      string
	Lesson    string // said once it is tasted
	Stray     string // what else moves, and by more
	Foams     bool   // no batch keeps its foam
	Hot       bool   // it is kept and served hot
	Watered   bool   // nothing differs but the water
}

// buildView is one build, as whoever pours needs it.
type buildView struct {
	Code     int
	Steps    string
	Value    string
	Drift    string
	Rows     []buildRow
	WaterOne string
	WaterAll string
	TotalOne string
	TotalAll string
	Topped   bool // something is poured into each glass, which the total leaves out
}

// buildRow is one pour, for one glass and for all.
type buildRow struct{ Name, One, All string }

// tasterView is what one taster is handed, in order.
type tasterView struct {
	Number int
	Codes  []int
}

// How a form is first filled in.
var firstFlight = flightForm{Axis: ratio.Sweet.String(), Builds: "3", Step: "2", Tasters: "4"}

func flightViewOf(sent flightForm, menu []behind.HouseSpec, asked bool) *flightView {
	if !asked {
		drink := sent.Drink
		sent = firstFlight
		if sent.Drink = drink; drink == ownText && len(menu) > 0 {
			sent.Drink = menu[0].Slug
		}
		sent.Seed = newSeed()
	}
	v := &flightView{Form: sent}
	for i := range menu {
		v.Drinks = append(v.Drinks, form.Option{Value: menu[i].Slug, Name: menu[i].Spec.Name, Chosen: menu[i].Slug == sent.Drink})
	}
	for _, a := range ratio.Axes() {
		v.Axes = append(v.Axes, form.Option{Value: a.String(), Name: a.Noun(), Chosen: a.String() == sent.Axis})
	}
	for _, n := range []string{"3", "5"} {
		v.Builds = append(v.Builds, form.Option{Value: n, Name: n, Chosen: n == sent.Builds})
	}
	return v
}

func (p *pages) flightPlan(r *tasting.FlightRequest, f *tasting.Flight, form flightForm) *flightPlan {
	noun := f.Axis.Noun()
	v := &flightPlan{Name: r.Spec.Name, Task: say.It("training.number-them", "Axis", noun), Alcohol: alcoholOf(p.house.Settings(), f.EthanolG),
		Cautions: f.Cautions, Care: p.bar.Cautions(r.Spec), Allergens: part.AllergensOf(r.Spec, nil), Other: form.address(newSeed()), Unit: f.Unit,
		Lesson: f.Lesson, Foams: f.Foams, Hot: f.Hot, Watered: f.Watered}
	if f.Stray != nil {
		v.Stray = say.It("training.stray", "Stray", f.Stray.Axis.Noun(), "Steps", words.Figure(f.Stray.Steps, 1), "Axis", noun)
	}
	if v.Name == "" {
		v.Name = say.It("training.drink-in-the-box")
	}
	for i := range f.Builds {
		b := &f.Builds[i]
		v.Servings = words.Figure(b.Sheet.Servings, 0)
		v.Builds = append(v.Builds, buildViewOf(b, f.Unit))
	}
	for i, codes := range f.Orders {
		v.Tasters = append(v.Tasters, tasterView{i + 1, codes})
	}
	return v
}

func buildViewOf(b *tasting.Glass, unit string) buildView {
	v := buildView{Code: b.Code, Steps: say.It("training.as-it-is-poured"), Value: words.Figure(b.Value, decimalsOf(b.Value)) + " " + unit}
	if b.Step != 0 {
		v.Steps = say.It("training.steps", "Steps", words.Signed(b.JND, 1))
	}
	if b.Drift >= driftTold {
		v.Drift = say.It("training.drift", "Axis", b.DriftOf.Noun(), "Steps", words.Figure(b.Drift, 1))
	}
	next, top := 0, 0
	for i := range b.Spec.Pours {
		pour := &b.Spec.Pours[i]
		row := buildRow{Name: pour.Profile.Name, One: fineAmount(pour), All: say.It("training.into-each-glass")}
		switch {
		case next < len(b.Sheet.Pours) && b.Sheet.Pours[next].Profile == pour.Profile:
			row.All = batchAmount(&b.Sheet.Pours[next])
			next++
		case top < len(b.Sheet.Tops):
			row.One = batchAmount(&b.Sheet.Tops[top])
			top++
		}
		v.Rows = append(v.Rows, row)
	}
	v.Topped = len(b.Sheet.Tops) > 0
	v.WaterOne, v.WaterAll = tenth(b.Sheet.WaterML/b.Sheet.Servings), measured(b.Sheet.WaterML)
	v.TotalOne, v.TotalAll = whole(b.Sheet.PourML), whole(b.Sheet.TotalML)
	return v
}

// decimalsOf is how many decimals a value of an axis is given with: as many as can be tasted.
func decimalsOf(value float64) int {
	if value < 10 {
		return 2
	}
	return 1
}

// driftTold is how far, in noticeable steps, another axis may move unsaid.
const driftTold = 0.1

// tenth writes an amount as a measuring cylinder shows it.
func tenth(ml float64) string { return words.Figure(ml, 1) + " mL" }

// whole writes a volume that is poured out and not measured.
func whole(ml float64) string { return words.Figure(ml, 0) + " mL" }

// measured writes a volume as it is measured out, to the marks of a vessel.
func measured(ml float64) string { return words.Plain(ml) + " mL" }

// fineAmount writes the share of one build of a pour: liquids finer than a jigger, since only
// the batch is measured out.
func fineAmount(p *flavor.Pour) string {
	if p.Unit != flavor.Millilitre {
		return part.Amount(p)
	}
	return tenth(p.ML)
}

// batchAmount writes a pour of a batch.
func batchAmount(p *flavor.Pour) string {
	if p.Unit == flavor.Millilitre {
		return measured(p.ML)
	}
	return part.Amount(p)
}

// alcoholOf says how much alcohol that is, in grams and as the house's country counts.
func alcoholOf(said house.Settings, ethanolG float64) string {
	s := said.Standard(ethanolG)
	return said.Figures(say.It("training.alcohol", "Grams", words.Figure(ethanolG, 1), "Drinks", words.Figure(s.Count, 1),
		"Standard", words.Plain(math.Round(10*s.Grams)/10), "Country", s.Country))
}
