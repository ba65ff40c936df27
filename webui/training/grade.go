package training

import (
	htmltemplate "html/template"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
	"counterpour/webui/draw"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// gradeView is what became of an answer.
type gradeView struct {
	Word     string
	Points   string // of 100
	Question string
	Solution string
	Slip     string // what the hand did wrong; empty for rounds without a slip
	Why      string // why the answer is wrong; empty for a right one
	Proper   *properView
	Text     string
	Next     string            // what it does to the next round
	Curve    htmltemplate.HTML // how the rounds like it went; empty before the second
	Unkept   string            // why it could not be kept; empty if it was
	Pairs    htmltemplate.HTML
	Hollow   string // what the hollow bars are
	Full     string
	Unit     string
	// Drawing is a drink beside its family, which for a spoilt one would say another thing
	// than the key: hardly any slip leaves the range of a family on one axis alone.
	Drawing *part.Drawing
	Name    string // of the drink that is drawn

	Allergens part.Allergens // of the drinks that the round is of
}

// properView is the drink as it should be poured.
type properView struct {
	Name, Method string
	Pours        []properPour
}

// properPour is a pour, and whether it was the wrong one.
type properPour struct {
	Text  string
	Wrong bool
}

func properOf(g *drill.Grade) *properView {
	if g.Proper == nil {
		return nil
	}
	v := &properView{Name: g.Proper.Name, Method: string(g.Proper.Method) + ", " + string(g.Proper.Service)}
	for i := range g.Proper.Pours {
		p := &g.Proper.Pours[i]
		v.Pours = append(v.Pours, properPour{words.Bound(part.Amount(p) + " " + p.Profile.Name), slices.Contains(g.Wrong, i)})
	}
	return v
}

// drinksOf is all that a round is of, as one drink: what it showed and offered, and the
// drink that it did not show.
func drinksOf(r *drill.Round) flavor.Spec {
	all := offeredIn(r)
	for i := range r.Specs {
		all.Pours = append(all.Pours, r.Specs[i].Pours...)
	}
	for _, s := range r.Drinks() {
		all.Pours = append(all.Pours, s.Pours...)
	}
	return all
}

// sidesOf names what is drawn before and after; empty where nothing is.
func sidesOf(k drill.Kind) (before, after string) {
	switch k {
	case drill.KindFault:
		return say.It("training.poured-properly"), say.It("training.as-it-was-poured")
	case drill.KindMend:
		return say.It("training.as-it-was-poured"), say.It("training.after-your-move")
	case drill.KindOrder:
		return say.It("training.least-of-three"), say.It("training.most-of-three")
	case drill.KindCover:
		return say.It("training.drink"), say.It("training.with-its-best-cover")
	case drill.KindFamily:
		return say.It("training.drink"), say.It("training.middle-of-its-family")
	}
	return "", ""
}

func (p *pages) gradeOf(r *drill.Round, g *drill.Grade) (*gradeView, error) {
	v := &gradeView{Word: say.It("training.not-this-time"), Points: words.Points(100 * g.Points), Question: words.Sentence(words.Bound(r.Question)),
		Solution: words.Sentence(words.Bound(g.Solution)), Text: words.Bound(g.Text), Why: words.Bound(g.Why), Proper: properOf(g)}
	if g.Slip != "" {
		v.Slip = words.Sentence(words.Bound(g.Slip))
	}
	of := drinksOf(r)
	v.Allergens = part.AllergensOf(&of, nil)
	if g.Right {
		v.Word = say.It("training.right")
	}
	if v.Hollow, v.Full = sidesOf(r.Request.Kind); v.Hollow != "" {
		v.Unit = say.It("training.parts-before-ice")
		scale := 1.0
		if r.Request.Kind == drill.KindFamily {
			v.Unit, scale = say.It("training.per-cent-of-the-whole"), 100
		}
		v.Pairs = draw.PairsSVG("pairs", words.Sentence(say.It("training.one-beside-another", "One", v.Hollow, "Another", v.Full)), 0, pairsOf(&g.Before, &g.After, scale))
	}
	if r.Request.Kind != drill.KindGuess {
		return v, nil
	}
	spec := &r.Specs[0]
	judged, err := p.bar.Judge(spec)
	if err != nil || len(judged.Judgement.Fits) == 0 {
		return v, err
	}
	v.Drawing, v.Name = part.ScoredDrawing(p.bar, spec, judged), spec.Name
	return v, nil
}

// pairsOf are the parts that either drink has.
func pairsOf(before, after *ratio.Equivalents, scale float64) (out []draw.Pair) {
	for _, a := range ratio.Axes() {
		if x := (draw.Pair{Name: words.Axes()[a].Name, Before: scale * before[a], After: scale * after[a]}); max(x.Before, x.After) >= 0.5 {
			out = append(out, x)
		}
	}
	return out
}
