package webui

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
)

// Trainer makes and grades rounds, and remembers who answered how. It is used
// concurrently. A learner is named by a word that says nothing of who it is.
type Trainer interface {
	// Next makes a round for a learner, who may be unknown.
	Next(learner string, w RoundWish) (*drill.Round, error)
	// Again makes the round of a request once more.
	Again(r drill.RoundRequest) (*drill.Round, error)
	// Grade grades an answer and notes it, once for each round.
	Grade(learner string, r *drill.Round, a drill.Answer) (*drill.Grade, error)
	// Learner returns what is known of a learner, empty if nothing is.
	Learner(learner string) drill.Learner
}

// RoundWish asks for a round.
type RoundWish struct {
	Kind    drill.Kind    // empty for what the learner needs most
	Axis    template.Axis // if HasAxis
	HasAxis bool          // else the trainer picks one
	Size    float64       // in just-noticeable steps; 0 for what the learner's results ask for
}

// drillChoice is what may be trained, as the page calls it.
type drillChoice struct {
	ID, Name string
	wish     RoundWish
}

var drillChoices = []drillChoice{
	{"", "What I need most", RoundWish{}},
	{"fault", "Name the fault", RoundWish{Kind: drill.KindFault}},
	{"mend", "Mend it", RoundWish{Kind: drill.KindMend}},
	{"order-sweet", "Order by sweetness", RoundWish{Kind: drill.KindOrder, Axis: template.Sweet, HasAxis: true}},
	{"order-strong", "Order by strength", RoundWish{Kind: drill.KindOrder, Axis: template.Strong, HasAxis: true}},
	{"guess", "Guess strength and volume", RoundWish{Kind: drill.KindGuess}},
	{"cover", "Pick the cover", RoundWish{Kind: drill.KindCover}},
	{"family", "Read the family", RoundWish{Kind: drill.KindFamily}},
}

// drillSizes are the sizes offered, the easiest first.
var drillSizes = []float64{12, 6, 3, 1.5}

// trainingWish is what the form at the top of the page asks for.
type trainingWish struct {
	what  int // of drillChoices
	Size  float64
	Asked bool // a round is wanted, not only the page
}

func readTrainingWish(r *http.Request) (trainingWish, error) {
	if err := parseForm(r); err != nil {
		return trainingWish{}, err
	}
	w := trainingWish{Asked: r.Form.Has("what")}
	w.what = slices.IndexFunc(drillChoices, func(c drillChoice) bool { return c.ID == r.Form.Get("what") })
	if w.what < 0 {
		return w, fmt.Errorf("%w: no drill is called %q", errBadForm, r.Form.Get("what"))
	}
	if text := r.Form.Get("steps"); text != "" {
		var err error
		if w.Size, err = strconv.ParseFloat(text, 64); err != nil || !slices.Contains(drillSizes, w.Size) {
			return w, fmt.Errorf("%w: no size is %q", errBadForm, text)
		}
	}
	return w, nil
}

// training shows the page; a round if one is asked for.
func (p *pages) training(w http.ResponseWriter, r *http.Request) error {
	if r.Method == http.MethodPost {
		return p.graded(w, r)
	}
	wish, err := readTrainingWish(r)
	if err != nil {
		return err
	}
	learner := learnerOf(r)
	v := p.trainingView(wish, learner)
	if !wish.Asked {
		return p.write(w, r, http.StatusOK, "training", "layout", v)
	}
	wanted := drillChoices[wish.what].wish
	wanted.Size = wish.Size
	round, err := p.trainer.Next(learner, wanted)
	if faults := faultsIn(err); len(faults) > 0 {
		v.Trouble = sentence(faults[0].Message)
		return p.write(w, r, http.StatusUnprocessableEntity, "training", "layout", v)
	}
	if err != nil {
		return err
	}
	v.Question = questionOf(round, roundForm{})
	return p.write(w, r, http.StatusOK, "training", "layout", v)
}

// graded grades what was sent, or asks again if the answer is not whole.
func (p *pages) graded(w http.ResponseWriter, r *http.Request) error {
	wish, err := readTrainingWish(r)
	if err != nil {
		return err
	}
	request, err := readRoundRequest(r.Form)
	if err != nil {
		return err
	}
	round, err := p.trainer.Again(request)
	if faults := faultsIn(err); len(faults) > 0 {
		return fmt.Errorf("%w: %w", errBadForm, err)
	}
	if err != nil {
		return err
	}
	learner := learnerOf(r)
	if learner == "" {
		learner = newLearner(w, r)
	}
	form := roundForm(r.Form)
	var grade *drill.Grade
	answer, err := form.answer(round)
	if err == nil {
		grade, err = p.trainer.Grade(learner, round, answer)
	}
	if faults := faultsIn(err); len(faults) > 0 {
		v := p.trainingView(wish, learner)
		v.Question = questionOf(round, form)
		v.Question.Trouble = sentence(faults[0].Message)
		return p.write(w, r, http.StatusUnprocessableEntity, "training", "layout", v)
	}
	if err != nil {
		return err
	}
	v := p.trainingView(wish, learner)
	if v.Grade, err = p.gradeOf(round, grade, form); err != nil {
		return err
	}
	v.Grade.Next = v.nextOf(round)
	return p.write(w, r, http.StatusOK, "training", "layout", v)
}

// learnerCookie names the learner of a browser; it holds nothing else, and goes
// when the browser is closed.
const (
	learnerCookie = "learner"
	learnerBytes  = 16
)

// learnerOf is the learner of a request, empty if there is none yet.
func learnerOf(r *http.Request) string {
	c, err := r.Cookie(learnerCookie)
	if err != nil {
		return ""
	}
	if raw, err := hex.DecodeString(c.Value); err != nil || len(raw) != learnerBytes {
		return ""
	}
	return c.Value
}

func newLearner(w http.ResponseWriter, r *http.Request) string {
	raw := make([]byte, learnerBytes)
	rand.Read(raw) // never fails
	id := hex.EncodeToString(raw)
	http.SetCookie(w, &http.Cookie{Name: learnerCookie, Value: id, Path: "/training", HttpOnly: true,
		Secure: r.TLS != nil, SameSite: http.SameSiteLaxMode})
	return id
}

// trainingView is the page of training: what may be chosen, and beside it a
// question or a grade.
type trainingView struct {
	Choices  []trainingOption
	Sizes    []trainingOption
	What     string
	Steps    string
	Trouble  string
	Question *questionView
	Grade    *gradeView
	Skills   []skillView

	skills []drill.Skill
}

// trainingOption is an entry of a list to choose from.
type trainingOption struct {
	Value, Name string
	Chosen      bool
}

func (p *pages) trainingView(w trainingWish, learner string) *trainingView {
	v := &trainingView{What: drillChoices[w.what].ID, Sizes: []trainingOption{{"", "as my results ask for", w.Size == 0}}}
	for i, c := range drillChoices {
		v.Choices = append(v.Choices, trainingOption{c.ID, c.Name, i == w.what})
	}
	for i, s := range drillSizes {
		text := strconv.FormatFloat(s, 'g', -1, 64)
		name := text + " steps: " + []string{"plain", "the usual start", "fine", "for a trained palate"}[i]
		v.Sizes = append(v.Sizes, trainingOption{text, name, s == w.Size})
		if s == w.Size {
			v.Steps = text
		}
	}
	if learner == "" {
		return v
	}
	v.skills = p.trainer.Learner(learner).Skills
	for i := range v.skills {
		v.Skills = append(v.Skills, skillViewOf(&v.skills[i]))
	}
	return v
}

// skillView is one thing trained and how it goes.
type skillView struct{ Name, Right, Next, Tells string }

func skillViewOf(s *drill.Skill) skillView {
	v := skillView{Name: skillName(s), Right: fmt.Sprintf("%d of %d", s.Right, s.Rounds), Next: figure(s.Stairs.Next(), 1), Tells: "not known yet"}
	if size, _, ok := s.Stairs.Threshold(); ok {
		v.Tells = "from " + figure(size, 1) + " steps"
	}
	return v
}

var kindNames = map[drill.Kind]string{drill.KindFault: "Name the fault", drill.KindMend: "Mend it", drill.KindOrder: "Put in order",
	drill.KindGuess: "Guess strength and volume", drill.KindCover: "Pick the cover", drill.KindFamily: "Read the family"}

func skillName(s *drill.Skill) string {
	name := kindNames[s.Kind]
	if a, ok := template.ParseAxis(s.Axis); ok {
		name += ": " + axisNoun[a]
	}
	return name
}

// axisNoun names an axis as a thing that there is more or less of.
var axisNoun = [template.NumAxes]string{"strength", "sweetness", "acid", "bitterness", "length"}

// nextOf says what the round does to the size of the next.
func (v *trainingView) nextOf(r *drill.Round) string {
	for i := range v.skills {
		s := &v.skills[i]
		if s.Kind != r.Request.Kind || s.Axis != "" && s.Axis != r.Request.Axis.String() {
			continue
		}
		next := s.Stairs.Next()
		word := "as hard"
		switch {
		case next < 0.99*r.Size:
			word = "harder"
		case next > 1.01*r.Size:
			word = "easier"
		}
		return fmt.Sprintf("The next round like this is %s: %s just-noticeable steps, after %s.", word, figure(next, 1), figure(r.Size, 1))
	}
	return ""
}

// missing is a fault of an answer that is not whole.
func missing(where, message string) error {
	return &flavor.Fault{Kind: flavor.ErrInvalid, Location: where, Message: strings.TrimSpace(message)}
}
