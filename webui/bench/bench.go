package bench

import (
	"net/http"
	"strconv"
	"strings"

	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
)

// benchForm is what the bench sends. Unknown fields are passed over; an
// allergen that is not known is refused, since a word passed over would be a
// guest unprotected.
type benchForm struct {
	Text   string
	Become string // the text to replace the draft with, if Becomes
	// Becomes tells an empty text to become from none.
	Becomes bool
	Missing string // name or id of what ran out; empty if nothing did
	// Anywhere lets covers come from the whole catalogue and not only from what
	// the house has.
	Anywhere bool
	Guest    form.Guest
	View     string // how the draft is shown: as text or as rows
	Compare  compareForm
	Scale    scaleForm
	Save     saveForm
	// Means is a name that nobody knew and the id of what it is in this house; Forget,
	// one that means nothing any more.
	Means, Forget string
}

// The ways to show a draft.
const (
	viewText = "text"
	viewRows = "rows"
)

// readBenchForm reads the form of a POST, or the address of a GET, so that a
// draft can be linked to.
func readBenchForm(r *http.Request) (benchForm, error) {
	if err := form.Parse(r); err != nil {
		return benchForm{}, err
	}
	f := benchForm{Text: form.Lines(r.Form.Get("text")), Missing: r.Form.Get("missing"), Anywhere: lastOf(r.Form["from"]) == "all", View: viewText,
		Compare: readCompareForm(r.Form), Scale: scaleForm{r.Form.Has("scale"), strings.TrimSpace(r.Form.Get("volume"))}, Save: readSaveForm(r.Form)}
	// The first view is how the draft stands on the page, another how it is
	// asked for. What is filled in counts where it can be seen.
	if views := r.Form["view"]; len(views) > 0 {
		if views[0] == viewRows {
			f.Text = applyRows(f.Text, r.Form)
		}
		if views[len(views)-1] == viewRows {
			f.View = viewRows
		}
	}
	if become, ok := r.Form["become"]; ok {
		f.Become, f.Becomes = form.Lines(become[0]), true
	}
	// Covers that stand open are asked for again, unless something else was
	// pressed that closes them.
	if f.Missing == "" && !f.Becomes && !r.Form.Has("close") {
		f.Missing = r.Form.Get("covering")
	}
	f.Means, f.Forget = r.PostForm.Get("means"), r.PostForm.Get("forget")
	var err error
	f.Guest, err = form.ReadGuest(r.Form)
	return f, err
}

// lastOf is what a button says over the field that it changes.
func lastOf(values []string) string {
	if len(values) == 0 {
		return ""
	}
	return values[len(values)-1]
}

// bench answers a draft: a whole page, or the answer alone to a script. A draft
// with faults is 422 as a page. As a fragment it is 200, since what is half
// typed is no error.
func (p *pages) bench(w http.ResponseWriter, r *http.Request) error {
	sent, err := readBenchForm(r)
	if err != nil {
		return err
	}
	if r.Method != http.MethodPost {
		sent.Save.Do = "" // only what is posted is kept
		if err := p.opened(r, &sent); err != nil {
			return err
		}
	}
	a, err := p.answer(r, sent)
	if err != nil {
		return err
	}
	if frame.IsFragment(r) {
		return p.Write(w, r, http.StatusOK, "bench", "answer", a)
	}
	status := a.Save.status()
	if len(a.Faults) > 0 || a.VolumeFault != "" {
		status = http.StatusUnprocessableEntity
	}
	return p.Write(w, r, status, "bench", "layout", benchPage{answer: a, Examples: part.ExamplesOf(p.bar, p.house.Settings())})
}

// opened fills the bench with the spec that the address names, unless it holds
// a draft of its own.
func (p *pages) opened(r *http.Request, f *benchForm) error {
	if f.Save.Spec == "" || strings.TrimSpace(f.Text) != "" {
		return nil
	}
	at, _ := strconv.ParseInt(r.Form.Get("at"), 10, 64) // what is no number asks for the current one
	var err error
	f.Text, f.Save.Version, err = p.openSpec(r.Context(), f.Save.Spec, at)
	return err
}

// benchPage is the whole bench.
type benchPage struct {
	*answer
	Examples []part.Example
}
