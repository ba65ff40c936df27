package bench

import (
	"context"
	"fmt"
	"math"
	"net/http"
	"regexp"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// toolsView is the page of prep sums: a calculator each, with what was sent to it.
type toolsView struct {
	Syrup  syrupTool
	Acid   acidTool
	Dilute diluteTool
}

// worked is what a calculator says.
type worked struct {
	Rows  []part.Row
	Sums  string // how it was worked out
	Note  string
	Fault string
}

type syrupTool struct {
	Brix, Yield string
	worked
}

type acidTool struct {
	Juice, Amount string
	Targets       []form.Option
	Juices        []string
	worked
}

type diluteTool struct {
	Amount, From, To string
	Bases            []form.Option
	worked
}

// tools works out what one of the forms asks. The others stand as they are
// first shown.
func (p *pages) tools(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	v := &toolsView{Syrup: syrupTool{Brix: "50", Yield: "500"}, Acid: acidTool{Juice: "orange juice", Amount: "500"},
		Dilute: diluteTool{Amount: "700", From: "57", To: "40"}}
	f := form.Values(r.Form)
	var out *worked
	var err error
	switch f.Get("tool") {
	case "":
	case "syrup":
		out = &v.Syrup.worked
		v.Syrup.Brix, v.Syrup.Yield = f.Get("brix"), f.Get("yield")
		err = out.syrup(f)
	case "acid":
		out = &v.Acid.worked
		v.Acid.Juice, v.Acid.Amount = f.Get("juice"), f.Get("amount")
		err = p.acid(out, f)
	case "dilute":
		out = &v.Dilute.worked
		v.Dilute.Amount, v.Dilute.From, v.Dilute.To = f.Get("amount"), f.Get("from"), f.Get("to")
		err = out.dilute(f)
	default:
		return fmt.Errorf("%w: no tool is called %q", form.ErrUnreadable, f.Get("tool"))
	}
	status := http.StatusOK
	if faults := flavor.FaultsOf(err); len(faults) > 0 {
		status, out.Fault, err = http.StatusUnprocessableEntity, words.Sentence(faults[0].Message), nil
	}
	if err != nil {
		return err
	}
	v.Acid.Targets, v.Dilute.Bases = form.Choose(acidTargets, f.Get("target")), form.Choose(diluteBases, f.Get("basis"))
	if v.Acid.Juices, err = p.juices(r.Context()); err != nil {
		return err
	}
	return p.Write(w, r, status, "tools", "layout", v)
}

var (
	acidTargets = []form.Option{{Value: "lime", Name: "lime"}, {Value: "lemon", Name: "lemon"}}
	diluteBases = []form.Option{{Value: "spirit", Name: "of the spirit I have"}, {Value: "final", Name: "that I want in the end"}}
)

func (w *worked) row(name, amount string) {
	w.Rows = append(w.Rows, part.Row{Name: name, Amount: amount})
}

// finely writes what is weighed or measured, to three figures or so.
func finely(v float64, unit string) string {
	decimals := 2
	switch {
	case v >= 100:
		decimals = 0
	case v >= 10:
		decimals = 1
	}
	return words.Figure(v, decimals) + "\u00a0" + unit
}

func (w *worked) syrup(f form.Values) error {
	brix, err := brixOf(f)
	if err != nil {
		return err
	}
	yield, err := f.Number("yield", "the yield", "mL")
	if err != nil {
		return err
	}
	s, err := mix.MakeSyrup(brix, yield)
	if err != nil {
		return err
	}
	keep, err := mix.Keeping(brix, false)
	if err != nil {
		return err
	}
	w.row("Sugar", finely(s.SugarG, "g"))
	w.row("Water", finely(s.WaterG, "g"))
	w.row("Sugar in a litre", finely(s.SugarGPerL, "g"))
	w.Sums = fmt.Sprintf("%s mL weigh %s g at %s g/mL; %s %% of that is sugar and the rest water. Stir until it is clear and let no water boil away.",
		words.Plain(yield), words.Figure(s.MassG, 0), words.Figure(s.DensityGPerML, 3), words.Plain(brix))
	if s.Crystals {
		w.Sums += fmt.Sprintf(" Above %s °Bx table sugar crystallises out again at 20 °C.", words.Plain(mix.SaturatedBrix))
	}
	w.Note = fmt.Sprintf("Keeps %d to %d days. %s", keep.FromDays, keep.ToDays, keep.Text)
	return nil
}

// byWeight is a syrup as sugar to water.
var byWeight = regexp.MustCompile(`^([\d.,]+)\s*:\s*([\d.,]+)$`)

// brixOf reads how much sugar a syrup has, in °Bx or as sugar to water by weight, such as
// 2:1.
func brixOf(f form.Values) (float64, error) {
	parts := byWeight.FindStringSubmatch(f.Get("brix"))
	if parts == nil {
		return f.Number("brix", "the sugar", "°Bx")
	}
	sugar, err := form.Number(parts[1], "such as 2")
	if err != nil {
		return 0, form.Missing("brix", err.Error())
	}
	water, err := form.Number(parts[2], "such as 1")
	if err != nil || water <= 0 {
		return 0, form.Missing("brix", "write the sugar as °Bx, or as 2:1, sugar to water by weight")
	}
	return math.Round(1000*sugar/(sugar+water)) / 10, nil
}

// juices names what the house keeps that may be adjusted, sour ones left out.
func (p *pages) juices(ctx context.Context) ([]string, error) {
	stock, err := p.house.Stock(ctx)
	var out []string
	for _, s := range stock {
		if s.Class.Kin() == flavor.KinJuice {
			out = append(out, s.Name)
		}
	}
	return out, err
}

// juiceOf finds a juice by its name, or by that of its fruit.
func (p *pages) juiceOf(name string) (*flavor.Profile, error) {
	juice, err := p.bar.Named(name)
	if err == nil && juice.Class.Pressed() {
		return juice, nil
	}
	if pressed, none := p.bar.Named(name + " juice"); none == nil && pressed.Class.Pressed() {
		return pressed, nil
	}
	if err != nil {
		return nil, err
	}
	return nil, form.Missing("juice", juice.Name+" is no juice; name one, such as orange juice")
}

func (p *pages) acid(w *worked, f form.Values) error {
	ml, err := f.Number("amount", "the amount", "mL")
	if err != nil {
		return err
	}
	name := f.Get("juice")
	if name == "" {
		return form.Missing("juice", "name a juice, such as orange juice")
	}
	juice, err := p.juiceOf(name)
	if err != nil {
		return err
	}
	target, named := mix.LimeStrength, "lime"
	if f.Get("target") == "lemon" {
		target, named = mix.LemonStrength, "lemon"
	}
	a, err := mix.AdjustAcid(juice, ml, target)
	if err != nil {
		return err
	}
	w.row("Citric acid", finely(a.CitricG, "g"))
	w.row("Malic acid", finely(a.MalicG, "g"))
	w.row("Makes", finely(a.VolumeML, "mL"))
	w.Sums = fmt.Sprintf("%s has %s g/L of acid, as citric; with the powder it has %s g/L: %s g/L citric and %s g/L malic, as sour as %s by the drinks convention.",
		words.SentenceStart(juice.Name), words.Figure(a.TitratableBefore, 1), words.Figure(a.TitratableGPerL, 1), words.Figure(a.After.CitricGPerL, 1), words.Figure(a.After.MalicGPerL, 1), named)
	w.Note = "No two fruits are alike: taste before you add all of it. Weigh food-grade acid on a scale that reads 0.1 g, and treat the juice as fresh."
	return nil
}

func (w *worked) dilute(f form.Values) error {
	var v [3]float64
	for i, x := range []struct{ field, what, unit string }{{"amount", "the amount", "mL"}, {"from", "the strength of the spirit", "% vol"}, {"to", "the strength wanted", "% vol"}} {
		var err error
		if v[i], err = f.Number(x.field, x.what, x.unit); err != nil {
			return err
		}
	}
	work := mix.Dilute
	if f.Get("basis") == "final" {
		work = mix.DiluteTo
	}
	d, err := work(v[0], v[1], v[2])
	if err != nil {
		return err
	}
	w.row("Spirit", finely(d.SpiritML, "mL")+", "+finely(d.SpiritG, "g"))
	w.row("Water", finely(d.WaterML, "mL")+", "+finely(d.WaterG, "g"))
	w.row("Makes", finely(d.FinalML, "mL"))
	w.Sums = fmt.Sprintf("The alcohol stays: %s mL at %s %% vol hold as much as %s mL at %s %% vol.", words.Figure(d.SpiritML, 0), words.Plain(v[1]), words.Figure(d.FinalML, 0), words.Plain(v[2]))
	if d.ContractionML > 0.05 {
		w.Sums += fmt.Sprintf(" Spirit and water shrink as they mix: measured separately they are %s mL more.", words.Figure(d.ContractionML, 1))
	}
	w.Note = "At 20 °C. Sugar in the spirit is not counted, so the result for a liqueur is a little off."
	return nil
}
