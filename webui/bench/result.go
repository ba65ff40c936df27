package bench

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
	"counterpour/webui/behind"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// resultView is what the bench says of a draft that could be read.
type resultView struct {
	Name       string // of the drink, may be empty
	Score      string // 0 to 100
	Verdict    string
	Sentence   string
	Notes      []string      // what was assumed in reading
	Explained  []string      // the arithmetic of the score, line by line
	Unsaid     string        // how many more lines there are
	Incomplete string        // which lines it leaves out; empty if the whole draft was read
	Amiss      string        // what cannot be read of them, in short
	Mend       *part.Example // the likeliest name for the first of it; nil if there is none
	Large      *largeView    // what to ask of a draft that no glass holds; nil if it may be one drink
	Clashes    []string      // what the guest must not have
	Out        string        // which of its bottles ran out; empty if none did
	Guest      string        // who drinks it; empty for anybody
	Family     familyView
	Drawing    *part.Drawing
	Faults     []string
	Fixes      []fixView
	Withheld   bool // some fix pours what the guest must not have, and is left out
	Pours      []pourView
	Method     string
	Sizes      []sizeView
	Glass      *part.Glass // nil if it cannot be drawn
	Numbers    []numberView
	Allergens  part.Allergens
	Cautions   []behind.Caution
	Covers     *coversView
	Compare    *compareView // beside the draft that is held; nil if none is
}

// familyView is the family a draft most likely belongs to, and the others.
type familyView struct {
	Name    string
	Percent string
	Others  []string // "Daisy 6 %"
	Ratio   string
	Source  string
	Usual   string
}

// fixView is one way to mend a draft.
type fixView struct {
	Text, Score, Verdict string
	Draft                string
}

// pourView is one pour of the draft.
type pourView struct {
	ID      string
	Key     string // the id, with a number if the drink has it twice
	Amount  string
	ML      string // empty if the pour is written in mL
	Name    string
	Read    string // what was written, if it is not the name
	Marks   string // its allergens
	Avoided bool   // the guest must not have it
	Out     bool   // its covers stand open
	Gone    bool   // the house has run out of it
}

// ToCover is the first pour that the guest must not have and whose covers are not open;
// nil if there is none.
func (v *resultView) ToCover() *pourView {
	return v.toCover(func(p *pourView) bool { return p.Avoided })
}

// ToReplace is the first pour that ran out and whose covers are not open; nil if there is
// none.
func (v *resultView) ToReplace() *pourView {
	return v.toCover(func(p *pourView) bool { return p.Gone })
}

func (v *resultView) toCover(in func(*pourView) bool) *pourView {
	for i := range v.Pours {
		if p := &v.Pours[i]; in(p) {
			if p.Out {
				return nil
			}
			return p
		}
	}
	return nil
}

// numberView is one figure of the finished drink.
type numberView struct {
	Term, Value, PlusMinus, Unit string
	Sentence                     string
}

// leastShare is the probability from which another family is named.
const leastShare = 0.02

// result scores a spec and says everything about it.
func (p *pages) result(ctx context.Context, text string, s *flavor.Spec, f benchForm) (*resultView, *balance.Result, error) {
	scored, fixes, err := p.bar.Score(s)
	if err != nil {
		return nil, nil, err
	}
	if len(scored.Judgement.Fits) == 0 {
		return nil, nil, fmt.Errorf("%w: a score without a family", frame.ErrInternal)
	}
	best, g := &scored.Judgement.Fits[0], f.Guest.Limits()
	v := &resultView{Name: s.Name, Score: words.Points(scored.Judgement.Score),
		Verdict: words.Verdict(scored.Verdict), Sentence: words.VerdictSentence(scored.Verdict, best.Tail()), Notes: words.BoundAll(s.Notes),
		Guest: f.Guest.Line(), Family: p.family(scored.Judgement.Fits), Drawing: part.ScoredDrawing(p.bar, s, scored),
		Numbers: numbersOf(scored), Allergens: part.AllergensOf(s, g.Avoid), Cautions: p.bar.Cautions(s),
		Method: string(s.Method) + ", " + string(s.Service)}
	if err := v.explain(p.bar, s); err != nil {
		return nil, nil, err
	}
	if v.Glass, err = part.GlassOf(p.bar, "glass-drawn", s); err != nil {
		return nil, nil, err
	}
	for i := range scored.Faults {
		v.Faults = append(v.Faults, faultLine(&scored.Faults[i]))
	}
	fit := slices.DeleteFunc(slices.Clone(fixes), func(f balance.Fix) bool { return !f.Suits(&g) })
	v.Fixes, v.Withheld, v.Sizes = fixViews(text, s, fit), len(fit) < len(fixes), sizesOf(text, s)
	if v.Large = largeOf(text, s); v.Large != nil {
		v.Fixes, v.Withheld = nil, false // what mends an amount that nobody meant is no fix
	}
	v.Clashes = append(v.Allergens.Clashes(), part.Unfit(s, scored.Drink.ABV, &g)...)
	outs, err := p.house.RunOut(ctx)
	if err != nil {
		return nil, nil, err
	}
	v.Out = part.OutLine(s, outs)
	if f.Missing != "" {
		if v.Covers, err = p.covers(ctx, text, s, f); err != nil {
			return nil, nil, err
		}
	}
	v.Pours = pourViews(s, &g, v.Covers, outs)
	return v, scored, nil
}

// explainLines is the most lines of the arithmetic that are shown: a draft
// between families has more than anybody follows.
const explainLines = 24

// explain fills in how the score comes about.
func (v *resultView) explain(bar behind.Bar, s *flavor.Spec) error {
	steps, err := bar.Explain(s)
	if err != nil {
		return err
	}
	for _, step := range steps[:min(len(steps), explainLines)] {
		v.Explained = append(v.Explained, words.Sentence(words.Bound(step.Text)))
	}
	if more := len(steps) - len(v.Explained); more > 0 {
		v.Unsaid = say.It("bench.more-lines", "Lines", more, "Last", words.Sentence(steps[len(steps)-1].Text))
	}
	return nil
}

// said is the result in a line.
func (v *resultView) said() string {
	covers, missing := 0, ""
	if v.Covers != nil {
		covers, missing = len(v.Covers.Covers), v.Covers.Missing
	}
	return say.It("bench.said", "Clashes", strings.Join(v.Clashes, "; "), "Score", v.Score, "Verdict", strings.ToLower(v.Verdict),
		"Family", v.Family.Name, "Covers", covers, "Missing", missing)
}

// family says which family a draft belongs to, and what that family is.
func (p *pages) family(fits []weigh.Fit) familyView {
	v := familyView{Name: fits[0].Name, Percent: words.Percent(fits[0].Probability)}
	for _, f := range fits[1:] {
		if f.Probability >= leastShare && len(v.Others) < 3 {
			v.Others = append(v.Others, f.Name+" "+words.Percent(f.Probability))
		}
	}
	if f, ok := p.bar.Family(fits[0].ID); ok {
		v.Ratio, v.Source, v.Usual = ratioOf(&f), words.Sentence(f.Source), f.Usual
	}
	return v
}

func ratioOf(f *template.Family) string {
	var parts []string
	for i, a := range f.Axes {
		parts = append(parts, measure.FormatAmount(f.Ratio[i], flavor.PartUnit)+" "+strings.ToLower(words.Axes()[a].Name))
	}
	return words.List(parts)
}

// faultLine says a fault and how far it is.
func faultLine(f *balance.Fault) string {
	text := strings.TrimSuffix(words.Sentence(words.Bound(f.Text)), ".")
	if f.Method != "" { // no steps lead from well made to badly made
		return text + "."
	}
	steps, spread := words.Figure(f.Deviation, 1), ""
	if f.PlusMinus != 0 {
		spread = words.Figure(f.PlusMinus, 1)
	}
	if f.High {
		return say.It("bench.fault-over", "Fault", text, "Steps", steps, "Spread", spread)
	}
	return say.It("bench.fault-short", "Fault", text, "Steps", steps, "Spread", spread)
}

func fixViews(text string, s *flavor.Spec, fixes []balance.Fix) []fixView {
	var out []fixView
	for i := range fixes {
		f := &fixes[i]
		out = append(out, fixView{Text: words.Sentence(words.Bound(f.Text)), Score: words.Points(f.Score),
			Verdict: strings.ToLower(words.Verdict(weigh.VerdictOf(f.Score))), Draft: rewrite(text, s, &f.Spec)})
	}
	return out
}

func pourViews(s *flavor.Spec, g *guest.Guest, covers *coversView, outs []string) []pourView {
	var out []pourView
	seen := map[string]int{}
	for i := range s.Pours {
		pour := &s.Pours[i]
		p := pour.Profile
		v := pourView{ID: p.ID, Key: p.ID, Amount: part.Amount(pour), Name: p.Name,
			Marks: part.MarksLine(p), Avoided: !g.Accepts(p), Out: covers != nil && covers.ID == p.ID, Gone: slices.Contains(outs, p.ID)}
		if seen[p.ID]++; seen[p.ID] > 1 {
			v.Key += fmt.Sprintf("-%d", seen[p.ID])
		}
		if pour.Unit != flavor.Millilitre {
			v.ML = words.Millilitres(pour.ML) + " mL"
		}
		if flavor.NormaliseName(pour.Match.Asked) != flavor.NormaliseName(p.Name) {
			v.Read = pour.Match.Asked
		}
		out = append(out, v)
	}
	return out
}

// numbersOf lists what is read off the finished drink.
func numbersOf(r *balance.Result) []numberView {
	var out []numberView
	for _, x := range mix.Readouts() {
		value, spread := words.Readout(&x, r.Drink)
		out = append(out, numberView{x.Label, value, spread, x.Unit, x.Means})
	}
	return out
}
