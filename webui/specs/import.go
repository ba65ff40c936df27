package specs

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strings"
	"unicode/utf8"

	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// importPage is the page that takes specs in: what was pasted, what it reads
// as, and, once that is wanted, what was done.
type importPage struct {
	Forms  []form.Option
	Text   string // as it was pasted or sent; it stays until all of it is in
	Fault  string // why it cannot be read or kept at all
	Read   bool   // there is something to decide on
	Fresh  []importedSpec
	Same   []importedSpec
	Bad    []exchange.Bad
	Notes  []string
	Done   *exchange.Result
	Undo   *part.Undo // of what was brought in
	Unread string     // what a bad one's number counts
}

// importedSpec is a spec that was read.
type importedSpec struct {
	Slug, Name string
	Replaces   int64 // the version that it would replace; 0 if it is new
	Changes    []string
	Pours      []string
	Served     string // how it is made
}

// Good is how many would be written.
func (v *importPage) Good() int { return len(v.Fresh) }

// takeIn reads specs that were pasted or sent as a file and shows what they
// read as; asked once more, it keeps them.
func (p *pages) takeIn(w http.ResponseWriter, r *http.Request) error {
	v := &importPage{}
	if r.Method != http.MethodPost {
		v.Forms = formChoices("")
		return p.Write(w, r, http.StatusOK, "import", "layout", v)
	}
	form, err := v.receive(r)
	if err != nil {
		return err
	}
	v.Forms = formChoices(form.ID)
	status := http.StatusOK
	if err := p.readIn(r, v, form, r.PostForm.Get("do")); err != nil {
		if v.Fault, status = frame.Told(err); v.Fault == "" {
			return err
		}
	}
	return p.Write(w, r, status, "import", "layout", v)
}

func formChoices(chosen string) []form.Option {
	var out []form.Option
	for _, f := range specForms {
		out = append(out, form.Option{Value: f.ID, Name: f.name(), Chosen: f.ID == chosen})
	}
	return out
}

// receive reads the form. A file takes the place of what was pasted, and its
// ending says what it is.
func (v *importPage) receive(r *http.Request) (specForm, error) {
	var long *http.MaxBytesError
	switch err := r.ParseMultipartForm(frame.MaxBody); {
	case errors.As(err, &long):
		return specForm{}, form.ErrTooLong
	case errors.Is(err, http.ErrNotMultipart):
		if err := form.Parse(r); err != nil {
			return specForm{}, err
		}
	case err != nil:
		return specForm{}, fmt.Errorf("%w: %w", form.ErrUnreadable, err)
	}
	sent, err := specFormOf(r.PostForm.Get("as"))
	if err != nil {
		return sent, err
	}
	v.Text = form.Lines(r.PostForm.Get("text"))
	if r.MultipartForm == nil || len(r.MultipartForm.File["file"]) == 0 {
		return sent, nil
	}
	head := r.MultipartForm.File["file"][0]
	f, err := head.Open()
	if err != nil {
		return sent, fmt.Errorf("%w: %w", form.ErrUnreadable, err)
	}
	defer f.Close()
	body, err := io.ReadAll(f)
	if err != nil {
		return sent, fmt.Errorf("%w: %w", form.ErrUnreadable, err)
	}
	if len(body) > 0 {
		v.Text = strings.TrimPrefix(string(body), "\ufeff")
		sent = formByName(head.Filename, sent)
	}
	return sent, nil
}

// formByName is the form that a file's name ends in, else the one that was chosen.
func formByName(name string, chosen specForm) specForm {
	name = strings.ToLower(name)
	for _, e := range []struct{ ending, id string }{{".csv", "csv"}, {".tsv", "csv"}, {".json", "json-ld"}, {".jsonld", "json-ld"}, {".txt", "text"}} {
		if strings.HasSuffix(name, e.ending) {
			chosen, _ = specFormOf(e.id)
		}
	}
	return chosen
}

// readIn reads the text, and keeps what it holds if do says so: "all" only if
// nothing is bad, "good" what can be read.
func (p *pages) readIn(r *http.Request, v *importPage, sent specForm, do string) error {
	if !utf8.ValidString(v.Text) {
		v.Text = strings.ToValidUTF8(v.Text, "\ufffd")
		return &house.Error{Kind: house.ErrInvalid, Op: "import", Message: say.It("specs.not-utf8")}
	}
	reading, err := sent.read(v.Text, specbook.OnShelf{Ctx: r.Context(), Shelf: p.house.Shelf(), Names: p.bar})
	if err != nil {
		return err
	}
	v.Bad, v.Notes, v.Unread = reading.Bad, words.BoundAll(reading.Notes), sent.counts()
	if do == "" {
		return p.preview(r.Context(), v, reading)
	}
	mode := exchange.AllOrNone
	switch do {
	case "all":
	case "good":
		mode = exchange.KeepGood
	default:
		return fmt.Errorf("%w: nothing is called %q", form.ErrUnreadable, do)
	}
	if mode == exchange.AllOrNone && len(v.Bad) > 0 {
		if err := p.preview(r.Context(), v, reading); err != nil {
			return err
		}
		return &house.Error{Kind: house.ErrInvalid, Op: "import", Message: say.It("specs.nothing-imported")}
	}
	done, err := behind.SpecsOf(p.house).TakeIn(r.Context(), frame.By(r), reading, mode)
	if err != nil {
		return err
	}
	v.Done, v.Undo = &done, part.UndoOf(done.Changes, "/specs")
	for _, s := range reading.Specs() {
		v.Fresh = append(v.Fresh, importedSpec{Slug: s.ID, Name: s.Name})
	}
	if len(v.Bad) == 0 {
		v.Text = ""
	}
	return nil
}

func (f *specForm) read(text string, finder naming.Finder) (*exchange.Reading, error) {
	switch f.ID {
	case "csv":
		return exchange.ReadSpecs(strings.NewReader(text), finder)
	case "json-ld":
		return exchange.ReadRecipes(strings.NewReader(text), finder)
	}
	return exchange.ReadText(strings.NewReader(text), finder)
}

// counts is what the number of something unread counts.
func (f *specForm) counts() string {
	switch f.ID {
	case "csv":
		return say.It("specs.row")
	case "json-ld":
		return say.It("specs.recipe")
	}
	return say.It("specs.line")
}

// show fills in what would be poured.
func (v *importedSpec) show(s *house.Spec, shelf *house.Shelf) {
	for i := range s.Pours {
		x := &s.Pours[i]
		pour := flavor.Pour{Amount: x.Amount, Unit: x.Unit}
		said := part.Amount(&pour) + " " + part.ShelfName(shelf, x.Ingredient)
		if x.After {
			said = say.It("specs.pour-after", "Pour", said)
		}
		v.Pours = append(v.Pours, said)
	}
	v.Served = part.Serving(&flavor.Spec{Method: s.Method, Service: s.Service, Glass: s.Glass, Garnish: s.Garnish, Rim: s.Rim})
}

// preview holds what was read against the house, and writes nothing.
func (p *pages) preview(ctx context.Context, v *importPage, reading *exchange.Reading) error {
	incoming, err := behind.SpecsOf(p.house).Incoming(ctx, reading)
	if err != nil {
		return err
	}
	v.Read = true
	for i := range incoming {
		in := &incoming[i]
		one := importedSpec{Slug: in.Spec.ID, Name: in.Spec.Name, Replaces: in.Version}
		one.show(&in.Spec, p.house.Shelf())
		switch {
		case in.Same():
			v.Same = append(v.Same, one)
			continue
		case in.Was != nil:
			one.Changes = part.SpecChanges(in.Was, &in.Spec, p.house.Shelf())
		}
		v.Fresh = append(v.Fresh, one)
	}
	return nil
}
