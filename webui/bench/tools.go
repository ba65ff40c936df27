package bench

import (
	"context"
	"fmt"
	"math"
	"net/http"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/mix"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// toolsView is the page of prep sums: a calculator each, with what was sent to it.
type toolsView struct {
	Night  nightTool
	Syrup  syrupTool
	Acid   acidTool
	Dilute diluteTool
}

// worked is what a calculator says.
type worked struct {
	Rows  []part.Row
	Sums  string // how it was worked out
	Note  string
	Asks  string // whether another amount was meant; empty if not
	Fault string
}

// leastPrepML is the least that anybody prepares: less of it without a unit may be meant in
// litres. Common practice, no source.
const leastPrepML = 10.0

// readAs tells how an amount in mL was read that is too little to prepare and has no unit.
func (w *worked) readAs(typed string, ml float64) {
	if ml < leastPrepML && !strings.ContainsFunc(typed, unicode.IsLetter) {
		w.Asks = say.It("bench.read-as-millilitres", "Typed", typed)
	}
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
	v := &toolsView{Night: nightTool{Drinks: "100"}, Syrup: syrupTool{Brix: "50", Yield: "500"}, Acid: acidTool{Juice: "orange juice", Amount: "500"},
		Dilute: diluteTool{Amount: "700", From: "57", To: "40"}}
	f := form.Values(r.Form)
	var out *worked
	var err error
	switch f.Get("tool") {
	case "":
	case "night":
		out = &v.Night.worked
		v.Night.Drinks = f.Get("drinks")
		err = p.night(r.Context(), out, f)
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
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		status, out.Fault, err = http.StatusUnprocessableEntity, words.Sentence(faults[0].Message), nil
	}
	if err != nil {
		return err
	}
	v.Acid.Targets, v.Dilute.Bases = form.Choose(acidTargets(), f.Get("target")), form.Choose(diluteBases(), f.Get("basis"))
	if v.Acid.Juices, err = p.juices(r.Context()); err != nil {
		return err
	}
	return p.Write(w, r, status, "tools", "layout", v)
}

func acidTargets() []form.Option {
	return []form.Option{{Value: "lime", Name: say.It("bench.lime")}, {Value: "lemon", Name: say.It("bench.lemon")}}
}

func diluteBases() []form.Option {
	return []form.Option{{Value: "spirit", Name: say.It("bench.spirit-i-have")}, {Value: "final", Name: say.It("bench.wanted-in-the-end")}}
}

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
	yield, err := f.Number("yield", say.It("bench.the-yield"), "mL")
	if err != nil {
		return err
	}
	s, err := mix.MakeSyrup(brix, yield)
	if err != nil {
		return err
	}
	w.readAs(f.Get("yield"), yield)
	keep, err := mix.Keeping(brix, false)
	if err != nil {
		return err
	}
	w.row(say.It("bench.sugar"), finely(s.SugarG, "g"))
	w.row(say.It("bench.water"), finely(s.WaterG, "g"))
	w.row(say.It("bench.sugar-in-a-litre"), finely(s.SugarGPerL, "g"))
	saturated := ""
	if s.Crystals {
		saturated = words.Plain(mix.SaturatedBrix)
	}
	w.Sums = say.It("bench.syrup-sums", "Volume", words.Plain(yield), "Mass", finely(s.MassG, "g"), "Density", words.Figure(s.DensityGPerML, 3),
		"Brix", words.Plain(brix), "Saturated", saturated)
	w.Note = say.It("bench.keeps", "From", keep.FromDays, "To", keep.ToDays, "How", keep.Text)
	return nil
}

// byWeight is a syrup as sugar to water.
var byWeight = pattern.Of(`^([\d.,]+)\s*:\s*([\d.,]+)$`)

// brixOf reads how much sugar a syrup has, in °Bx or as sugar to water by weight, such as
// 2:1.
func brixOf(f form.Values) (float64, error) {
	parts := byWeight.FindStringSubmatch(f.Get("brix"))
	if parts == nil {
		return f.Number("brix", say.It("bench.the-sugar"), "°Bx")
	}
	sugar, err := form.Number(parts[1], say.It("bench.such-as-two"))
	if err != nil {
		return 0, form.Missing("brix", err.Error())
	}
	water, err := form.Number(parts[2], say.It("bench.such-as-one"))
	if err != nil || water <= 0 {
		return 0, form.Missing("brix", say.It("bench.write-the-sugar"))
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
	return nil, form.Missing("juice", say.It("bench.is-no-juice", "Name", juice.Name))
}

func (p *pages) acid(w *worked, f form.Values) error {
	ml, err := f.Number("amount", say.It("bench.the-amount"), "mL")
	if err != nil {
		return err
	}
	name := f.Get("juice")
	if name == "" {
		return form.Missing("juice", say.It("bench.name-a-juice"))
	}
	juice, err := p.juiceOf(name)
	if err != nil {
		return err
	}
	target, named := mix.LimeStrength, say.It("bench.lime")
	if f.Get("target") == "lemon" {
		target, named = mix.LemonStrength, say.It("bench.lemon")
	}
	a, err := mix.AdjustAcid(juice, ml, target)
	if err != nil {
		return err
	}
	w.readAs(f.Get("amount"), ml)
	w.row(say.It("bench.citric-acid"), finely(a.CitricG, "g"))
	w.row(say.It("bench.malic-acid"), finely(a.MalicG, "g"))
	w.row(say.It("bench.makes"), finely(a.VolumeML, "mL"))
	w.Sums = say.It("bench.acid-sums", "Juice", words.SentenceStart(juice.Name), "Before", words.Figure(a.TitratableBefore, 1), "After", words.Figure(a.TitratableGPerL, 1),
		"Citric", words.Figure(a.After.CitricGPerL, 1), "Malic", words.Figure(a.After.MalicGPerL, 1), "Target", named)
	w.Note = say.It("bench.acid-note")
	return nil
}

func (w *worked) dilute(f form.Values) error {
	var v [3]float64
	for i, x := range []struct{ field, what, unit string }{
		{"amount", say.It("bench.the-amount"), "mL"}, {"from", say.It("bench.the-strength-of-the-spirit"), "% vol"}, {"to", say.It("bench.the-strength-wanted"), "% vol"},
	} {
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
	w.readAs(f.Get("amount"), v[0])
	w.row(say.It("bench.spirit"), finely(d.SpiritML, "mL")+", "+finely(d.SpiritG, "g"))
	w.row(say.It("bench.water"), finely(d.WaterML, "mL")+", "+finely(d.WaterG, "g"))
	w.row(say.It("bench.makes"), finely(d.FinalML, "mL"))
	shrinks := ""
	if d.ContractionML > 0.05 {
		shrinks = words.Figure(d.ContractionML, 1)
	}
	w.Sums = say.It("bench.dilute-sums", "Spirit", finely(d.SpiritML, "mL"), "From", words.Plain(v[1]), "Final", finely(d.FinalML, "mL"), "To", words.Plain(v[2]), "Shrinks", shrinks)
	w.Note = say.It("bench.dilute-note")
	return nil
}
