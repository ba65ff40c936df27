package training

import (
	"net/http"
	"slices"
	"strconv"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// trainingView is the page of training: what may be chosen, and beside it a
// question or a grade.
type trainingView struct {
	Who      whoView
	Played   string // rounds so far; empty before the first
	Choices  []form.Option
	Sizes    []form.Option
	Boxes    []form.Box // allergens to avoid
	Avoid    []flavor.Allergen
	What     string
	Steps    string
	Sitting  string // as forms send it on
	Score    string // of the sitting; empty before its first round
	Round    int    // of its set, from 1: the one that is asked next
	Set      int    // rounds of a set
	SetDone  string // how the set went that was just ended
	Trouble  string
	Question *questionView
	Grade    *gradeView
}

func (p *pages) trainingView(r *http.Request, w trainingWish) (*trainingView, drill.Learner, error) {
	who := personOf(r)
	learner, err := p.learners.Of(r.Context(), who)
	if err != nil {
		return nil, learner, err
	}
	sent := whoOf(r, trainingPath)
	sent.Open = sent.Open && !w.Asked
	v := &trainingView{Who: sent, Played: playedBy(&learner),
		What: drillChoices[w.what].ID, Sizes: []form.Option{{Value: "", Name: say.It("training.size-by-results"), Chosen: w.Size == 0}}}
	v.sat(w.sitting)
	v.Avoid = w.Avoid
	for _, a := range flavor.Allergens() {
		v.Boxes = append(v.Boxes, form.Box{Allergen: a, Ticked: slices.Contains(w.Avoid, a)})
	}
	for i, c := range drillChoices {
		v.Choices = append(v.Choices, form.Option{Value: c.ID, Name: c.name(), Chosen: i == w.what})
	}
	for i, s := range drillSizes {
		text := strconv.FormatFloat(s, 'g', -1, 64)
		v.Sizes = append(v.Sizes, form.Option{Value: text, Name: sizeName(i, text), Chosen: s == w.Size})
		if s == w.Size {
			v.Steps = text
		}
	}
	return v, learner, nil
}

// sizeName says how hard one of drillSizes is.
func sizeName(i int, steps string) string {
	switch i {
	case 0:
		return say.It("training.size-plain", "Steps", steps)
	case 1:
		return say.It("training.size-usual", "Steps", steps)
	case 2:
		return say.It("training.size-fine", "Steps", steps)
	}
	return say.It("training.size-trained", "Steps", steps)
}

// playedBy says how many rounds a learner has played.
func playedBy(l *drill.Learner) string {
	rounds, right := 0, 0
	for i := range l.Skills {
		rounds += l.Skills[i].Rounds
		right += l.Skills[i].Right
	}
	if rounds == 0 {
		return ""
	}
	return say.It("training.played", "Rounds", rounds, "Right", right)
}

// kindName is what a kind of drill is called; empty if there is none such.
func kindName(k drill.Kind) string {
	switch k {
	case drill.KindFault:
		return say.It("training.drill-fault")
	case drill.KindMend:
		return say.It("training.drill-mend")
	case drill.KindOrder:
		return say.It("training.drill-order")
	case drill.KindGuess:
		return say.It("training.drill-guess")
	case drill.KindCover:
		return say.It("training.drill-cover")
	case drill.KindFamily:
		return say.It("training.drill-family")
	case drill.KindHand:
		return say.It("training.drill-hand")
	}
	return ""
}

// skillName names a drill; its axis is empty for those without one.
func skillName(kind drill.Kind, axis string) string {
	if a, ok := ratio.ParseAxis(axis); ok {
		return say.It("training.skill-by", "Drill", kindName(kind), "Axis", a.Noun())
	}
	return kindName(kind)
}

// stepsOf writes a size of a drill in noticeable steps, those of a guess
// more finely.
func stepsOf(kind drill.Kind, size float64) string {
	decimals := 1
	if kind == drill.KindGuess {
		decimals = 2
	}
	return words.Figure(drill.Steps(kind, size), decimals)
}

// trainedBy is the skill that a round trains, nil if it was not played.
func trainedBy(l *drill.Learner, r *drill.Round) *drill.Skill {
	for i := range l.Skills {
		if s := &l.Skills[i]; s.Kind == r.Request.Kind && (s.Axis == "" || s.Axis == r.Request.Axis.String()) {
			return s
		}
	}
	return nil
}

// nextOf says what a round did to the size of the next.
func nextOf(s *drill.Skill, r *drill.Round) string {
	size := s.Stairs.Next()
	next, before := stepsOf(s.Kind, size), stepsOf(s.Kind, r.Size)
	switch {
	case size < 0.99*r.Size:
		return say.It("training.next-is-harder", "Next", next, "Before", before)
	case size > 1.01*r.Size:
		return say.It("training.next-is-easier", "Next", next, "Before", before)
	}
	return say.It("training.next-is-as-hard", "Next", next, "Before", before)
}
