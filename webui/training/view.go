package training

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
	"counterpour/webui/form"
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
		What: drillChoices[w.what].ID, Sizes: []form.Option{{Value: "", Name: "set by my results", Chosen: w.Size == 0}}}
	v.sat(w.sitting)
	v.Avoid = w.Avoid
	for _, a := range flavor.Allergens() {
		v.Boxes = append(v.Boxes, form.Box{Allergen: a, Ticked: slices.Contains(w.Avoid, a)})
	}
	for i, c := range drillChoices {
		v.Choices = append(v.Choices, form.Option{Value: c.ID, Name: c.Name, Chosen: i == w.what})
	}
	for i, s := range drillSizes {
		text := strconv.FormatFloat(s, 'g', -1, 64)
		name := text + " steps: " + []string{"plain", "the usual start", "fine", "for a trained palate"}[i]
		v.Sizes = append(v.Sizes, form.Option{Value: text, Name: name, Chosen: s == w.Size})
		if s == w.Size {
			v.Steps = text
		}
	}
	return v, learner, nil
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
	return fmt.Sprintf("%s played, %d right.", words.Count(rounds, "round", "rounds"), right)
}

var kindNames = map[drill.Kind]string{drill.KindFault: "Name the fault", drill.KindMend: "Fix it", drill.KindOrder: "Put in order",
	drill.KindGuess: "Guess strength and volume", drill.KindCover: "Pick the cover", drill.KindFamily: "Read the family", drill.KindHand: "Find how it was made wrong"}

// skillName names a drill; its axis is empty for those without one.
func skillName(kind drill.Kind, axis string) string {
	name := kindNames[kind]
	if a, ok := ratio.ParseAxis(axis); ok {
		name += ": " + a.Noun()
	}
	return name
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
	next := s.Stairs.Next()
	word := "as hard"
	switch {
	case next < 0.99*r.Size:
		word = "harder"
	case next > 1.01*r.Size:
		word = "easier"
	}
	return fmt.Sprintf("The next round like this is %s: about %s noticeable steps, after %s.", word, stepsOf(s.Kind, next), stepsOf(s.Kind, r.Size))
}
