package training

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// drillChoice is what may be trained, as the page calls it.
type drillChoice struct {
	ID   string
	wish behind.RoundWish
}

var drillChoices = []drillChoice{
	{"", behind.RoundWish{}},
	{"fault", behind.RoundWish{Kind: drill.KindFault}},
	{"mend", behind.RoundWish{Kind: drill.KindMend}},
	{"order-sweet", behind.RoundWish{Kind: drill.KindOrder, Axis: ratio.Sweet, HasAxis: true}},
	{"order-strong", behind.RoundWish{Kind: drill.KindOrder, Axis: ratio.Strong, HasAxis: true}},
	{"guess", behind.RoundWish{Kind: drill.KindGuess}},
	{"cover", behind.RoundWish{Kind: drill.KindCover}},
	{"family", behind.RoundWish{Kind: drill.KindFamily}},
	{"hand", behind.RoundWish{Kind: drill.KindHand}},
}

// name is what a choice is called.
func (c *drillChoice) name() string {
	switch c.ID {
	case "":
		return say.It("training.drill-needed")
	case "order-sweet":
		return say.It("training.drill-order-sweet")
	case "order-strong":
		return say.It("training.drill-order-strong")
	}
	return kindName(c.wish.Kind)
}

// drillSizes are the sizes offered, the easiest first.
var drillSizes = []float64{12, 6, 3, 1.5}

// trainingWish is what the form at the top of the page asks for.
type trainingWish struct {
	what  int // of drillChoices
	Size  float64
	Asked bool // a round is wanted, not only the page
	Avoid []flavor.Allergen
	sitting
}

func readTrainingWish(r *http.Request) (trainingWish, error) {
	if err := form.Parse(r); err != nil {
		return trainingWish{}, err
	}
	w := trainingWish{Asked: r.Form.Has("what"), sitting: readSitting(r.Form.Get("sitting"))}
	w.what = slices.IndexFunc(drillChoices, func(c drillChoice) bool { return c.ID == r.Form.Get("what") })
	if w.what < 0 {
		return w, fmt.Errorf("%w: no drill is called %q", form.ErrUnreadable, r.Form.Get("what"))
	}
	var err error
	if w.Avoid, err = form.ReadAvoid(r.Form); err != nil {
		return w, err
	}
	if text := r.Form.Get("steps"); text != "" {
		if w.Size, err = strconv.ParseFloat(text, 64); err != nil || !slices.Contains(drillSizes, w.Size) {
			return w, fmt.Errorf("%w: no size is %q", form.ErrUnreadable, text)
		}
	}
	return w, nil
}

// training shows the page; a round if one is asked for.
func (p *pages) training(w http.ResponseWriter, r *http.Request) error {
	wish, err := readTrainingWish(r)
	if err != nil {
		return err
	}
	if r.Method == http.MethodPost {
		return p.graded(w, r, wish)
	}
	v, learner, err := p.trainingView(r, wish)
	if err != nil {
		return err
	}
	if !wish.Asked {
		return p.Write(w, r, http.StatusOK, "training", "layout", v)
	}
	if sealed := r.Form.Get("round"); sealed != "" {
		return p.handedOut(w, r, v, sealed)
	}
	wanted := drillChoices[wish.what].wish
	wanted.Size, wanted.Not, wanted.Avoid, wanted.Seen = wish.Size, wish.last, wish.Avoid, wish.seen
	round, err := p.trainer.Next(learner, wanted)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Trouble = words.Sentence(faults[0].Message)
		return p.Write(w, r, http.StatusUnprocessableEntity, "training", "layout", v)
	}
	if err != nil {
		return err
	}
	// The address of the question is its own, so that a reload shows it again.
	at := url.Values{"what": {v.What}, "round": {p.seal.seal(round)}}
	if v.Steps != "" {
		at.Set("steps", v.Steps)
	}
	if v.Sitting != "" {
		at.Set("sitting", v.Sitting)
	}
	for _, a := range wish.Avoid {
		at.Add("avoid", string(a))
	}
	http.Redirect(w, r, "/training?"+at.Encode(), http.StatusSeeOther)
	return nil
}

// handedOut shows a round that was handed out before.
func (p *pages) handedOut(w http.ResponseWriter, r *http.Request, v *trainingView, sealed string) error {
	round, err := p.sealed(sealed)
	if said, over := overWords(err); over {
		return p.over(w, r, v, said)
	}
	if err != nil {
		return err
	}
	v.Question = p.questionOf(round, form.Values{})
	v.Question.Round = sealed
	return p.Write(w, r, http.StatusOK, "training", "layout", v)
}

// errStrange means that no server of this house handed the round out with the key that it
// has now.
var errStrange = errors.New("training: the round is not one that was handed out")

// overWords is what the page says of a round that cannot be graded; false of other errors.
func overWords(err error) (string, bool) {
	switch {
	case errors.Is(err, errStrange):
		return say.It("training.over-strange"), true
	case errors.Is(err, coaching.ErrChanged):
		return say.It("training.over-changed"), true
	}
	return "", false
}

// sealed returns a round that was handed out, or why it cannot be graded.
func (p *pages) sealed(token string) (*drill.Round, error) {
	request, looked, ok := p.seal.open(token)
	if !ok {
		return nil, errStrange
	}
	return p.trainer.Again(request, looked)
}

// over says that a round cannot be graded any more.
func (p *pages) over(w http.ResponseWriter, r *http.Request, v *trainingView, said string) error {
	v.Trouble = said
	return p.Write(w, r, http.StatusGone, "training", "layout", v)
}

// graded grades what was sent, or asks again if the answer is not whole.
func (p *pages) graded(w http.ResponseWriter, r *http.Request, wish trainingWish) error {
	v, _, err := p.trainingView(r, wish)
	if err != nil {
		return err
	}
	round, err := p.sealed(r.Form.Get("round"))
	if said, over := overWords(err); over {
		return p.over(w, r, v, said)
	}
	if err != nil {
		return err
	}
	sent := form.Values(r.Form)
	var grade *drill.Grade
	answer, err := answerIn(sent, round)
	if err == nil {
		grade, err = p.trainer.Grade(round, answer)
	}
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Question = p.questionOf(round, sent)
		v.Question.Trouble = words.Sentence(faults[0].Message)
		return p.Write(w, r, http.StatusUnprocessableEntity, "training", "layout", v)
	}
	if err != nil {
		return err
	}
	if v.Grade, err = p.gradeOf(round, grade); err != nil {
		return err
	}
	if err := p.keep(w, r, v, round, grade, sent); err != nil {
		return err
	}
	v.sat(wish.sitting.after(round, grade.Right))
	return p.Write(w, r, http.StatusOK, "training", "layout", v)
}

// keep notes a graded round and says what it does to the next one. What the
// house cannot keep is told beside the grade.
func (p *pages) keep(w http.ResponseWriter, r *http.Request, v *trainingView, round *drill.Round, grade *drill.Grade, form form.Values) error {
	who := personOf(r)
	if who == (coaching.Trainee{}) {
		who = newLearner(w, r)
	}
	err := p.learners.Note(r.Context(), who, frame.By(r), round, grade, saidIn(form, round))
	var kept *house.Error
	if errors.As(err, &kept) {
		p.Log.ErrorContext(r.Context(), "result not kept", "err", err)
		v.Grade.Unkept = words.Sentence(say.It("training.result-not-kept", "Why", kept.Message))
	} else if err != nil {
		return err
	}
	learner, err := p.learners.Of(r.Context(), who)
	if err != nil {
		return err
	}
	if s := trainedBy(&learner, round); s != nil {
		v.Grade.Next, v.Grade.Curve = nextOf(s, round), curveOf("curve", s)
	}
	v.Played = playedBy(&learner)
	return nil
}
