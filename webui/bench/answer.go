package bench

import (
	"context"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service/kitchen"
	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// answer is everything said about a draft.
type answer struct {
	Text        string
	Metric      bool   // the house pours millilitres
	Rewrote     bool   // the text is not the one that was sent, nor one that a button named
	Undo        string // the text before it became another
	CanUndo     bool
	View        string
	Rows        *rowsView
	Before      string // the draft that is held to compare with
	Volume      string // mL, as typed
	VolumeFault string
	Empty       bool
	Faults      []part.Refused
	Read        *readView // what was read as what; nil if all of it stands as it was meant
	Result      *resultView
	Save        *saveView
	Card        string // address of the draft as a card; empty if it cannot be read
	Share       string // address at which the draft is shared; empty if there is none
	Guest       *form.Guest
	Named       *namedView
	Said        string // the answer in a line, for a screen reader
}

// Path is the address of the bench with the draft, for everybody.
func (a *answer) Path() string { return draftAddress(Path, a.Text, &form.Guest{}) }

// ForGuest is who the bench is shown for.
func (a *answer) ForGuest() *form.Guest { return a.Guest }

// answer reads, scores and covers a draft, and keeps it if that was asked.
// Faults of the draft are part of the answer; an error is the bar's own.
func (p *pages) answer(r *http.Request, f benchForm) (*answer, error) {
	a := &answer{Text: f.Text, View: f.View, Metric: p.house.Settings().Units == measure.Metric, Volume: f.Scale.Volume, Before: p.held(&f), Guest: &f.Guest}
	var err error
	if a.Named, err = p.named(r, &f); err != nil {
		return nil, err
	}
	if f.Becomes {
		a.Text, a.Undo, a.CanUndo = f.Become, f.Text, strings.TrimSpace(f.Text) != "" && f.Text != f.Become
	}
	if f.Save.Do != "" && f.Save.Called != "" {
		a.rewrite(renamed(a.Text, f.Save.Called))
	}
	a.Empty = strings.TrimSpace(a.Text) == ""
	var read reading.Reading
	if !a.Empty {
		if read, err = p.read(r.Context(), a, f); err != nil {
			return nil, err
		}
	}
	pours := -1
	if !a.Empty && len(a.Faults) == 0 {
		pours = len(read.Spec.Pours)
	}
	a.Rows = rowsOf(a.Text, pours)
	a.Rows.Shown = a.View == viewRows
	if !a.Empty {
		a.Share = draftAddress(sharePath, a.Text, &f.Guest)
	}
	return a, p.saved(r, a, f.Save, &read.Spec)
}

// read reads and scores the draft: all of it, or what can be read, beside the faults of
// the rest.
func (p *pages) read(ctx context.Context, a *answer, f benchForm) (reading.Reading, error) {
	read, err := p.bar.ReadRest(a.Text)
	if err == nil {
		a.Read = p.readBack(a.Text, &read, f.Guest.Limits())
		if len(read.Faults) > 0 {
			a.Result, err = p.incomplete(ctx, a.Text, &read, f)
		} else {
			err = p.judged(ctx, a, &read.Spec, f)
		}
	}
	faults := slices.Concat(read.Faults, flavor.DataFaultsOf(err))
	if len(flavor.DataFaultsOf(err)) == 0 && err != nil || len(faults) == 0 {
		return read, err
	}
	if a.Faults, err = part.RefusedOf(p.bar, remedy.Request{Text: a.Text, Faults: faults, Rest: &read, Guest: f.Guest.Limits()}); err != nil {
		return read, err
	}
	a.Said = say.It("bench.things-to-fix", "Things", len(a.Faults))
	if a.Result != nil {
		a.Result.Mend = a.Faults[0].Renamed()
		a.Said = say.It("bench.faults-and-rest", "Faults", a.Said, "Incomplete", a.Result.Incomplete)
	}
	return read, nil
}

// rewrite replaces the text by one that the bench itself made.
func (a *answer) rewrite(text string) {
	if text == a.Text {
		return
	}
	if !a.CanUndo {
		a.Undo, a.CanUndo = a.Text, true
	}
	a.Text, a.Rewrote = text, true
}

// judged says everything about a draft that could be read.
func (p *pages) judged(ctx context.Context, a *answer, s *flavor.Spec, f benchForm) error {
	if f.Scale.Asked {
		to, err := p.toVolume(s, f.Scale.Volume)
		switch faults := flavor.DataFaultsOf(err); {
		case len(faults) > 0 && faults[0].Place().Field == "volume":
			a.VolumeFault = volumeFault(faults[0])
		case err != nil:
			return err
		default:
			if a.Before == "" {
				a.Before = a.Text
			}
			a.rewrite(rewrite(a.Text, s, &to))
			*s = to
		}
	}
	var err error
	if a.Result, _, err = p.result(ctx, a.Text, s, f); err != nil {
		return err
	}
	a.Said, a.Card = a.Result.said(), "/card?"+url.Values{"text": {a.Text}}.Encode()
	a.Result.Compare, err = p.compare(a.Before, s)
	return err
}

// leastRestML is the least that a readable rest pours to be scored; common practice.
const leastRestML = 30.0

// incomplete says what can be said of a draft while some of it cannot be read: the
// drink is not the one that was meant, so nothing is said of what it lacks or of what
// would mend or cover it, and what a guest must not have may be in the rest. It is nil if
// the rest is too little to be a drink, or more than any glass holds.
func (p *pages) incomplete(ctx context.Context, text string, read *reading.Reading, f benchForm) (*resultView, error) {
	if _, poured, batch := kitchen.OneOfBatch(&read.Spec); batch || poured < leastRestML {
		return nil, nil
	}
	f.Missing = ""
	v, scored, err := p.result(ctx, text, &read.Spec, f)
	if err != nil {
		return nil, err
	}
	what := say.It("bench.what-could-not-be-read")
	if lines := linesOf(read.Faults); len(lines) > 0 {
		what = words.List(lines)
	}
	v.Incomplete = say.It("bench.incomplete", "What", what)
	v.Amiss = amissOf(read.Faults)
	v.Faults = nil
	for i := range scored.Faults {
		if said := &scored.Faults[i]; said.High || said.Method != "" { // what is short may be in the rest
			v.Faults = append(v.Faults, faultLine(said))
		}
	}
	v.Fixes, v.Withheld, v.Sizes = nil, false, nil
	if f.Guest.Ticked() {
		v.Clashes = append(v.Clashes, say.It("bench.may-hold-anything", "What", what))
	}
	return v, nil
}

// linesOf names the lines of a draft that faults are in, each once.
func linesOf(faults flavor.DataFaults) []string {
	var out []string
	for _, f := range faults {
		line := say.It("bench.line", "Line", f.Place().Line)
		if f.Place().Line > 0 && !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	return out
}

// saved keeps the draft if that was asked, or says why it cannot be.
func (p *pages) saved(r *http.Request, a *answer, f saveForm, s *flavor.Spec) error {
	a.Save = &saveView{Spec: f.Spec, Version: f.Version, Called: f.Called}
	switch {
	case f.Do != "" && a.Empty:
		a.Save.Trouble = say.It("bench.no-draft-to-save")
	case f.Do != "" && len(a.Faults) > 0:
		a.Save.Trouble = say.It("bench.faults-are-not-saved")
	case f.Do != "":
		var err error
		a.Save, err = p.save(r, f, s)
		return err
	}
	return p.origin(r.Context(), a.Save)
}

// amissOf says in short what cannot be read: the first of it, and how much more there is.
func amissOf(missed flavor.DataFaults) string {
	if len(missed) == 0 {
		return ""
	}
	said, _, _ := strings.Cut(missed[0].Message, ";")
	if lines := linesOf(missed[:1]); len(lines) > 0 {
		said = say.It("bench.line-fault", "Line", lines[0], "Trouble", said)
	}
	said = words.Sentence(said)
	if n := len(missed) - 1; n > 0 {
		said = say.It("bench.and-more", "First", said, "More", n)
	}
	return said
}
