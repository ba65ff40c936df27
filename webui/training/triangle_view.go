package training

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// triangleView is the page of triangle tests.
type triangleView struct {
	Form    triangleForm
	Menu    []string
	Bottles []string
	Alphas  []form.Option
	Powers  []form.Option
	Trouble string
	Undo    *part.Undo // of what was just kept
	Test    *testView
	Past    []pastView
}

// testView is one test, laid out or begun.
type testView struct {
	Drink, Cover string
	Each         string
	Sums         []string // what the plan can find
	Alcohol      string
	Sober        bool // neither side holds any to speak of
	Sides        []sideView
	Told         string          // what B is
	Out          string          // which of its bottles have run out
	Looks        string          // how the two differ to the eye
	Foams        bool            // a side lives by its foam
	Poured       bool            // how both are poured is said
	Both         *part.Allergens // of both sides, where both are known; else nil
	Servings     []servingView
	Done         string // how many have picked
	Begun        bool
	Verdict      *verdictView
	Hidden       []hiddenField
	Other        string // the same with other codes; empty once it was begun
}

// hiddenField is a field that a form carries along.
type hiddenField struct{ Name, Value string }

// sideView is what one side of the test carries.
type sideView struct {
	Mark, Name string
	Known      bool // its allergens are worked out from the house's records
	Together   bool // they are said once for both sides, which every taster drinks
	Allergens  part.Allergens
	Cautions   []behind.Caution
	Sheet      *sheetView // how it is poured; nil if nobody here knows
}

// outOf says which of the bottles of some drinks have run out; empty if none has.
func (p *pages) outOf(ctx context.Context, drinks ...*flavor.Spec) (string, error) {
	outs, err := p.house.RunOut(ctx)
	var all flavor.Spec
	for _, d := range drinks {
		if d != nil {
			all.Pours = append(all.Pours, d.Pours...)
		}
	}
	return part.OutLine(&all, outs), err
}

// servingView is what one taster is handed.
type servingView struct {
	Number int
	Order  string // for whoever pours
	Field  string
	Codes  []codeView
	None   bool // nothing is picked yet
}

// codeView is one glass.
type codeView struct {
	Code   int
	Side   string // A or B; for whoever pours
	Picked bool
}

// verdictView is what a closed test found.
type verdictView struct {
	Word  string
	Text  string
	P     string
	Right string
	Share string
}

// pastView is one test of the list.
type pastView struct{ Link, When, Drink, Cover, Found string }

// How a form is first filled in.
var firstTriangle = triangleForm{Each: "25", Alpha: "5", Power: "80", Share: "50"}

// inAHundred offers chances in 100; the usual one says so.
func inAHundred(usual string, chances ...string) []form.Option {
	out := make([]form.Option, len(chances))
	for i, c := range chances {
		out[i] = form.Option{Value: c, Name: say.It("training.in-a-hundred", "Number", c, "Usual", c == usual)}
	}
	return out
}

func (p *pages) triangleView(ctx context.Context, sent triangleForm, asked bool) (*triangleView, error) {
	if !asked {
		sent = firstTriangle
		sent.Seed = newSeed()
	}
	v := &triangleView{Form: sent, Alphas: form.Choose(inAHundred(firstTriangle.Alpha, "1", "5", "10"), sent.Alpha), Powers: form.Choose(inAHundred(firstTriangle.Power, "70", "80", "90", "95"), sent.Power)}
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return nil, err
	}
	for i := range menu {
		v.Menu = append(v.Menu, menu[i].Spec.Name)
	}
	stock, err := p.house.Stock(ctx)
	if err != nil {
		return nil, err
	}
	for _, s := range stock {
		v.Bottles = append(v.Bottles, s.Name)
	}
	past, err := p.pastTests(ctx)
	if err != nil {
		return nil, err
	}
	for i := range past {
		one, err := pastViewOf(&past[i])
		if err != nil {
			return nil, err
		}
		v.Past = append(v.Past, one)
	}
	return v, nil
}

func pastViewOf(t *house.Triangle) (pastView, error) {
	test := openTest{Triangle: *t}
	v := pastView{Link: trianglePath + "?test=" + t.ID, When: words.Day(t.At), Drink: t.Drink, Cover: t.Cover,
		Found: say.It("training.under-way", "Picked", test.answered(), "Tasters", len(t.Servings))}
	if !t.Closed {
		return v, nil
	}
	found, err := verdictOf(t)
	if err != nil {
		return v, err
	}
	v.Found = say.It("training.found", "Word", strings.ToLower(foundWord(found)), "Right", found.Right, "Answers", found.Answers, "P", words.Figure(found.P, 3))
	return v, nil
}

func foundWord(v *tasting.Triangulation) string {
	if v.Different {
		return say.It("training.can-be-told-apart")
	}
	return say.It("training.no-difference-shown")
}

func (p *pages) testView(ctx context.Context, t *openTest) (*testView, error) {
	v := &testView{Drink: t.Drink, Cover: t.Cover, Each: words.Plain(t.GlassML), Begun: t.version > 0,
		Done: say.It("training.have-picked", "Picked", t.answered(), "Tasters", len(t.Servings))}
	if t.plan != nil {
		v.Sums, v.Other = sumsOf(t.plan), t.form.address(newSeed())
		v.Sober = !t.plan.Assumed && tasting.Sober(t.plan.EthanolG)
		assumed := ""
		if t.plan.Assumed {
			assumed = words.Figure(coaching.SpiritABV, 0)
		}
		v.Alcohol = say.It("training.whoever-swallows", "Alcohol", alcoholOf(p.house.Settings(), t.plan.EthanolG), "Assumed", assumed)
		for _, name := range []string{"drink", "cover", "each", "tasters", "alpha", "power", "share", "seed"} {
			v.Hidden = append(v.Hidden, hiddenField{name, t.form.values(t.form.Seed).Get(name)})
		}
	} else {
		v.Hidden = []hiddenField{{"test", t.ID}}
	}
	v.Hidden = append(v.Hidden, hiddenField{"version", strconv.FormatInt(t.version, 10)})
	for i := range t.Servings {
		v.Servings = append(v.Servings, servingViewOf(i, &t.Servings[i]))
	}
	spec, err := p.ofMenu(ctx, t.Drink)
	if err != nil {
		return nil, err
	}
	if v.Out, err = p.outOf(ctx, spec, p.bottleAlone(t.Cover)); err != nil {
		return nil, err
	}
	v.Told = say.It("training.a-and-b-in-the-cover", "Drink", t.Drink, "Cover", t.Cover)
	v.Sides = []sideView{p.sideView("A", t.Drink, spec), p.sideView("B", t.Cover, p.bottleAlone(t.Cover))}
	if t.plan != nil && t.plan.B != nil {
		p.addSheets(v, t.plan)
	}
	if !t.Closed {
		return v, nil
	}
	found, err := verdictOf(&t.Triangle)
	if err != nil {
		return nil, err
	}
	v.Verdict = &verdictView{Word: foundWord(found), Text: words.Sentence(found.Text), P: words.Figure(found.P, 3), Right: say.It("training.right-of", "Right", found.Right, "Answers", found.Answers),
		Share: say.It("training.share-between", "Low", words.Figure(100*found.Low, 0), "High", words.Figure(100*found.High, 0))}
	return v, nil
}

// addSheets says how both sides are poured, and what B is.
func (p *pages) addSheets(v *testView, plan *coaching.TriangleAnswer) {
	for i, side := range []*coaching.TriangleSide{plan.A, plan.B} {
		s := &v.Sides[i]
		s.Known, s.Together, s.Cautions = true, true, p.bar.Cautions(&side.Spec)
		s.Sheet = sheetViewOf(side)
		v.Foams = v.Foams || side.Foams
	}
	both := part.AllergensOf(&flavor.Spec{Pours: slices.Concat(plan.A.Spec.Pours, plan.B.Spec.Pours)}, nil)
	v.Looks, v.Poured, v.Both = plan.Looks, true, &both
	if plan.Instead != nil {
		v.Sides[1].Name = say.It("training.with-cover", "Cover", v.Cover)
		v.Told = say.It("training.a-and-b-in-place", "Drink", v.Drink, "Cover", v.Cover, "Instead", plan.Instead.Name)
	} else {
		v.Told = say.It("training.a-and-b", "Drink", v.Drink, "Cover", v.Cover)
	}
}

// sheetView is how one side is poured for all tasters.
type sheetView struct {
	Glasses string
	Rows    []buildRow
	Water   buildRow // for the ice
	Total   buildRow
	Foams   bool // it is shaken with ice, without the water
	Topped  bool // something is poured into each glass, which the total leaves out
}

func sheetViewOf(side *coaching.TriangleSide) *sheetView {
	b := &side.Sheet
	v := &sheetView{Glasses: say.It("training.glasses", "Glasses", side.Glasses), Foams: side.Foams, Topped: len(b.Tops) > 0,
		Water: buildRow{One: tenth(b.WaterML / b.Servings), All: measured(b.WaterML)},
		Total: buildRow{One: whole(b.PourML), All: whole(b.TotalML)}}
	for i := range b.Pours {
		pour := &b.Pours[i]
		row := buildRow{Name: pour.Profile.Name, One: tenth(pour.ML / b.Servings), All: batchAmount(pour)}
		if pour.Profile.Class.Solid() {
			row.One = say.It("training.its-share")
		}
		v.Rows = append(v.Rows, row)
	}
	for i := range b.Tops {
		v.Rows = append(v.Rows, buildRow{Name: b.Tops[i].Profile.Name, One: measured(b.Tops[i].ML), All: say.It("training.into-each-glass")})
	}
	return v
}

// sumsOf says what a plan can and cannot find.
func sumsOf(p *coaching.TriangleAnswer) []string {
	out := []string{say.It("training.least-right", "Tasters", p.Tasters, "Right", p.LeastRight),
		say.It("training.by-chance", "Alpha", words.Figure(100*p.RealAlpha, 1)),
		say.It("training.found-by-test", "Share", words.Figure(100*p.Share, 0), "Power", words.Figure(100*p.Power, 0))}
	switch {
	case p.LeastRight > p.Tasters:
		out[0] = say.It("training.can-show-nothing", "Tasters", p.Tasters)
	case p.Power >= p.Wanted:
	case p.Enough > 0:
		out = append(out, say.It("training.less-than-wanted", "Wanted", words.Figure(100*p.Wanted, 0), "Enough", p.Enough))
	}
	if p.Tasters%6 != 0 {
		out = append(out, say.It("training.orders-to-six"))
	}
	return out
}

func servingViewOf(i int, s *house.TriangleServing) servingView {
	v := servingView{Number: i + 1, Order: s.Order, Field: pickField(i), None: s.Picked == 0}
	for k, code := range s.Codes {
		v.Codes = append(v.Codes, codeView{Code: code, Side: s.Order[k : k+1], Picked: code == s.Picked})
	}
	return v
}

// bottleAlone is what is poured in the cover, if the house knows it by this name;
// else nil, and anything may be in it.
func (p *pages) bottleAlone(name string) *flavor.Spec {
	profile, _, err := p.house.Shelf().Resolve(name)
	if err != nil {
		return nil
	}
	return &flavor.Spec{Pours: []flavor.Pour{{Profile: profile}}}
}

func (p *pages) sideView(mark, name string, spec *flavor.Spec) sideView {
	v := sideView{Mark: mark, Name: name, Known: spec != nil}
	if spec != nil {
		v.Allergens, v.Cautions = part.AllergensOf(spec, nil), p.bar.Cautions(spec)
	}
	return v
}
