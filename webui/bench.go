package webui

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
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
	Avoid   []flavor.Allergen
}

// readBenchForm reads the form of a POST, or the address of a GET, so that a
// draft can be linked to.
func readBenchForm(r *http.Request) (benchForm, error) {
	if err := parseForm(r); err != nil {
		return benchForm{}, err
	}
	f := benchForm{Text: plainLines(r.Form.Get("text")), Missing: r.Form.Get("missing")}
	if become, ok := r.Form["become"]; ok {
		f.Become, f.Becomes = plainLines(become[0]), true
	}
	// Covers that stand open are asked for again, unless something else was
	// pressed that closes them.
	if f.Missing == "" && !f.Becomes && !r.Form.Has("close") {
		f.Missing = r.Form.Get("covering")
	}
	var err error
	f.Avoid, err = readAvoid(r.Form)
	return f, err
}

// plainLines turns the line ends of a form into those of the text form.
func plainLines(s string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s)
}

// bench answers a draft: a whole page, or the answer alone to a script. A draft
// with faults is 422 as a page. As a fragment it is 200, since what is half
// typed is no error.
func (p *pages) bench(w http.ResponseWriter, r *http.Request) error {
	form, err := readBenchForm(r)
	if err != nil {
		return err
	}
	a, err := p.answer(r.Context(), form)
	if err != nil {
		return err
	}
	if isFragment(r) {
		return p.write(w, r, http.StatusOK, "bench", "answer", a)
	}
	status := http.StatusOK
	if len(a.Faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	return p.write(w, r, status, "bench", "layout", benchPage{answer: a, Examples: p.examples(),
		Guest: guestBoxes(form.Avoid), Ticked: len(form.Avoid) > 0})
}

// benchPage is the whole bench.
type benchPage struct {
	*answer
	Examples []example
	Guest    []guestBox
	Ticked   bool // the guest must not have something
}

// example is a drink of the house's menu to start from.
type example struct{ Name, Text string }

func (p *pages) examples() []example {
	var out []example
	for _, s := range p.bar.Examples() {
		out = append(out, example{Name: s.Name, Text: measure.Format(s)})
	}
	return out
}

// answer is everything said about a draft.
type answer struct {
	Text    string
	Undo    string // the text before it became another
	CanUndo bool
	Empty   bool
	Faults  []faultView
	Result  *resultView
	Said    string // the answer in a line, for a screen reader
}

// answer reads, scores and covers a draft. Faults of the draft are part of the
// answer; an error is the bar's own.
func (p *pages) answer(ctx context.Context, f benchForm) (*answer, error) {
	a := &answer{Text: f.Text}
	if f.Becomes {
		a.Text, a.Undo, a.CanUndo = f.Become, f.Text, strings.TrimSpace(f.Text) != "" && f.Text != f.Become
	}
	if strings.TrimSpace(a.Text) == "" {
		a.Empty = true
		return a, nil
	}
	spec, err := p.bar.Read(a.Text)
	if err == nil {
		a.Result, err = p.result(ctx, a.Text, &spec, f)
	}
	if faults := faultsIn(err); len(faults) > 0 {
		a.Faults = faultViews(a.Text, faults)
		a.Said = count(len(a.Faults), "thing", "things") + " to mend in the draft."
		return a, nil
	}
	if err != nil {
		return nil, err
	}
	a.Said = a.Result.said()
	return a, nil
}

// faultsIn returns the faults of the user's that an error holds.
func faultsIn(err error) flavor.Faults {
	var many flavor.Faults
	if errors.As(err, &many) {
		return many
	}
	var one *flavor.Fault
	if errors.As(err, &one) {
		return flavor.Faults{one}
	}
	return nil
}

// faultView is one fault beside the box.
type faultView struct {
	Line    int    // from 1; 0 if the fault is of no line
	Quote   string // the line as written
	Message string
	Instead []example // the draft with a name that may have been meant
}

func faultViews(text string, faults flavor.Faults) []faultView {
	lines := strings.Split(text, "\n")
	var out []faultView
	for _, f := range faults {
		v := faultView{Message: sentence(f.Message)}
		n, err := strconv.Atoi(strings.TrimPrefix(f.Location, "line "))
		if err == nil && n >= 1 && n <= len(lines) {
			v.Line, v.Quote = n, strings.TrimSpace(lines[n-1])
			v.Instead = insteadOf(lines, n-1, f)
		}
		out = append(out, v)
	}
	return out
}

// insteadOf returns the draft with each name that was perhaps meant. Only names
// are put in place of the word at fault; a unit or an amount may be missing
// where the word stands.
func insteadOf(lines []string, at int, f *flavor.Fault) []example {
	if !errors.Is(f.Kind, flavor.ErrUnknown) || f.Value == "" || !strings.Contains(lines[at], f.Value) {
		return nil
	}
	var out []example
	for _, name := range f.Suggest {
		mended := slices.Clone(lines)
		mended[at] = strings.Replace(mended[at], f.Value, name, 1)
		out = append(out, example{Name: name, Text: strings.Join(mended, "\n")})
	}
	return out
}

// How names are offered while a line is typed.
const (
	leastTyped = 2 // letters before anything is offered
	maxNames   = 6
)

// nameOffer is an ingredient and the line that it would make.
type nameOffer struct{ Name, Line string }

// names offers ingredients for the line being typed. A line that cannot be read
// yet gets none.
func (p *pages) names(w http.ResponseWriter, r *http.Request) error {
	offers, err := p.offers(r.Context(), r.URL.Query().Get("line"))
	if err != nil {
		return err
	}
	return p.write(w, r, http.StatusOK, "bench", "names", offers)
}

func (p *pages) offers(ctx context.Context, line string) ([]nameOffer, error) {
	line = strings.TrimSpace(plainLines(line))
	// A first line may be a name; read the line as a later one.
	draft, err := measure.Parse("name: draft\n" + line)
	if err != nil || len(draft.Lines) != 1 {
		return nil, nil
	}
	typed := draft.Lines[0].Name
	head, ok := strings.CutSuffix(line, typed)
	if !ok || len([]rune(typed)) < leastTyped {
		return nil, nil
	}
	found, err := p.bar.Suggest(ctx, typed, maxNames)
	if err != nil {
		return nil, err
	}
	var out []nameOffer
	for _, f := range found {
		if flavor.NormaliseName(f.Name) == flavor.NormaliseName(typed) {
			return nil, nil
		}
		out = append(out, nameOffer{Name: f.Name, Line: head + f.Name})
	}
	return out, nil
}
