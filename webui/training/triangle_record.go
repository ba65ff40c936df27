package training

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// id names the test of a plan, so that a plan sent twice is one test.
func (f triangleForm) id() string {
	sum := sha256.Sum256([]byte(f.values(f.Seed).Encode()))
	return "triangle-" + hex.EncodeToString(sum[:12])
}

// What may be done with the picks that are sent.
const (
	keepPicks = "keep"
	closeTest = "close"
)

// picked keeps what the tasters picked. What was picked stands on the page
// whatever goes wrong.
func (p *pages) picked(w http.ResponseWriter, r *http.Request) error {
	test, err := p.sentTest(r)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 || errors.Is(err, house.ErrNotFound) {
		return fmt.Errorf("%w: %w", form.ErrUnreadable, err)
	}
	if err != nil {
		return err
	}
	if test.Closed {
		return p.showTriangle(w, r, http.StatusConflict, test, say.It("training.test-is-closed"))
	}
	if err := test.pick(r.Form); err != nil {
		return err
	}
	do := r.Form.Get("do")
	if do != keepPicks && do != closeTest {
		return fmt.Errorf("%w: %q is nothing to do with picks", form.ErrUnreadable, do)
	}
	if do == closeTest && test.answered() == 0 {
		return p.showTriangle(w, r, http.StatusUnprocessableEntity, test, say.It("training.nobody-has-picked"))
	}
	test.Closed = do == closeTest
	changes, err := p.house.Store().Write(r.Context(), frame.By(r), house.Put(test.Triangle, test.version))
	var unkept *house.Error
	switch {
	case errors.Is(err, house.ErrConflict):
		return p.merged(w, r, test)
	case errors.As(err, &unkept):
		p.Log.ErrorContext(r.Context(), "picks not kept", "err", err)
		test.Closed = false
		return p.showTriangle(w, r, http.StatusServiceUnavailable, test, words.Sentence(say.It("training.picks-not-kept", "Why", unkept.Message)))
	case err != nil:
		return err
	}
	return toTest(w, r, test.ID, changes)
}

// toTest leads to the page of a test, which offers to take back what was just kept.
func toTest(w http.ResponseWriter, r *http.Request, id string, kept []house.Change) error {
	to := url.Values{"test": {id}}
	for _, c := range kept {
		to.Set("undo", part.MarkOf(c.Ref, c.Version))
	}
	http.Redirect(w, r, trianglePath+"?"+to.Encode(), http.StatusSeeOther)
	return nil
}

// sentTest is the test that a form is of, as the house has it, or as it was laid
// out if the house has none yet. Its version is the one that the form was made on.
func (p *pages) sentTest(r *http.Request) (*openTest, error) {
	id, sent := r.Form.Get("test"), readTriangleForm(r.Form)
	if id == "" {
		id = sent.id()
	}
	version, err := strconv.ParseInt(r.Form.Get("version"), 10, 64)
	if err != nil {
		return nil, fmt.Errorf("%w: version: %w", form.ErrUnreadable, err)
	}
	kept, err := house.Get[house.Triangle](r.Context(), p.house.Store(), id)
	switch {
	case err == nil:
		return &openTest{Triangle: kept.Item, version: version}, nil
	case errors.Is(err, house.ErrNotFound) && r.Form.Get("test") == "":
		request, err := sent.request()
		if err != nil {
			return nil, err
		}
		request.Cover = "" // how it is poured was said with the plan, and only the picks count now
		test, err := p.layOut(r.Context(), sent, request)
		if err == nil {
			test.At = frame.By(r).At
		}
		return test, err
	}
	return nil, err
}

func (t *openTest) answered() (n int) {
	for i := range t.Servings {
		if t.Servings[i].Picked != 0 {
			n++
		}
	}
	return n
}

// pick takes the picks of a form; a taster that it has nothing of has none.
func (t *openTest) pick(sent url.Values) error {
	for i := range t.Servings {
		s := &t.Servings[i]
		s.Picked = 0
		text := sent.Get(pickField(i))
		if text == "" {
			continue
		}
		code, err := strconv.Atoi(text)
		if err != nil || !slices.Contains(s.Codes[:], code) {
			return fmt.Errorf("%w: taster %d had no glass %q", form.ErrUnreadable, i+1, text)
		}
		s.Picked = code
	}
	return nil
}

func pickField(i int) string { return fmt.Sprintf("pick-%d", i) }

// merged shows the picks that were sent over those that somebody else kept
// meanwhile, or goes on if they are the same: the page was sent twice.
func (p *pages) merged(w http.ResponseWriter, r *http.Request, sent *openTest) error {
	kept, err := house.Get[house.Triangle](r.Context(), p.house.Store(), sent.ID)
	if err != nil {
		return err
	}
	test := &openTest{Triangle: kept.Item, version: kept.Version}
	if test.Closed == sent.Closed && slices.Equal(test.Servings, sent.Servings) {
		return toTest(w, r, test.ID, nil)
	}
	if test.Closed {
		return p.showTriangle(w, r, http.StatusConflict, test, say.It("training.test-closed-meanwhile"))
	}
	for i := range test.Servings {
		if picked := sent.Servings[i].Picked; picked != 0 {
			test.Servings[i].Picked = picked
		}
	}
	return p.showTriangle(w, r, http.StatusConflict, test, say.It("training.too-many-hands"))
}

// verdictOf judges a test that is closed.
func verdictOf(t *house.Triangle) (*tasting.Triangulation, error) {
	plan := &tasting.Triangle{Tasters: len(t.Servings), Alpha: t.Alpha, Share: t.Share}
	picked := make([]int, len(t.Servings))
	for i, s := range t.Servings {
		odd := tasting.OddOf(s.Order)
		if odd < 0 {
			return nil, fmt.Errorf("training: triangle %s: %q is no order of glasses", t.ID, s.Order)
		}
		plan.Servings = append(plan.Servings, tasting.Serving{Order: s.Order, Codes: s.Codes, Odd: odd})
		picked[i] = s.Picked
	}
	return plan.Judge(picked)
}

// pastTests lists the tests of the house, the last one first.
func (p *pages) pastTests(ctx context.Context) ([]house.Triangle, error) {
	kept, err := house.All[house.Triangle](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	tests := house.Items(kept)
	slices.SortStableFunc(tests, func(a, b house.Triangle) int { return b.At.Compare(a.At) })
	return tests, nil
}
