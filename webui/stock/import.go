package stock

import (
	"bytes"
	"context"
	"errors"
	"io"
	"mime/multipart"
	"net/http"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/words"
)

// columnNote says what a column of a stock file holds.
type columnNote struct{ Name, Holds string }

var columnNotes = []columnNote{
	{"id", "Permanent id, in small letters and hyphens; empty, it is made of the name. A row whose id is in stock changes that bottle."},
	{"name", "As the house calls it. Needed."},
	{"ingredient", "Its category, such as London dry gin, by name or id. Needed."},
	{"well", "yes for the one that is poured, of two of a category; else empty."},
	{"abv_pct", "Strength in % vol, from the label; empty if the catalogue's holds."},
	{"brix", "Sugar in °Bx, for what holds no alcohol; empty if not measured."},
	{"sugar_g_per_l", "Sugar in g/L, in place of brix."},
	{"acid_g_per_l", "Acid in g/L."},
	{"price", "Of one full bottle; empty if not known."},
	{"currency", "Three letters, such as EUR; needed with a price."},
	{"size_ml", "What a full one holds, in mL. One size is needed."},
	{"size_g", "What a full one weighs, in g, for what is sold by weight."},
	{"stock", "How many there are, part ones as parts; empty is none."},
	{"note", "Anything."},
	{"label_contains", "Allergens that its label names, with commas between them. Leave it empty where the label names none."},
	{"label_may_contain", "Allergens that its label says may be in it."},
	{"label_read_by", "Who read the label. Without a name the label counts as unread, and what the maker keeps to himself as present."},
	{"label_read_at", "When, such as 2026-04-01."},
}

// importView is the page that takes a file of bottles.
type importView struct {
	Text    string
	Good    bool // the good rows are kept although some are bad
	Columns []columnNote
	Most    int // bytes of a file
	Trouble string
	Report  *importReport
}

// importReport is what became of a file.
type importReport struct {
	Title   string
	Counts  string
	Wrote   bool
	Bad     []exchange.Bad
	BadSaid string
}

// mostFile is the most bytes of a file, which leaves room for the rest of its
// form.
const mostFile = frame.MaxBody - 2<<10

// errTooMuch is a file or a text that is longer than a form may be.
var errTooMuch = errors.New("webui: the file is too long")

// importStock takes bottles as CSV, from a file or pasted.
func (p *pages) importStock(w http.ResponseWriter, r *http.Request) error {
	v := &importView{Columns: columnNotes, Most: mostFile}
	if r.Method != http.MethodPost {
		return p.Write(w, r, http.StatusOK, "stock-import", "layout", v)
	}
	text, good, err := readImport(r)
	v.Text, v.Good = strings.ToValidUTF8(text, "\uFFFD"), good
	status := http.StatusOK
	switch {
	case errors.Is(err, errTooMuch):
		status, v.Trouble = http.StatusRequestEntityTooLarge, "That is more than 1 MiB, which is some ten thousand bottles. Split the file, with the row of names on top of each part. Nothing was written; go back, and what you pasted is still there."
	case form.Faults(err) != nil:
		status, v.Trouble = http.StatusUnprocessableEntity, words.Sentence(form.Message(err))
	case err != nil:
		return err
	default:
		if status, err = p.take(r, text, v); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "stock-import", "layout", v)
}

// readImport returns the text of the file, or what was pasted, and whether good
// rows are to be kept although others are bad.
func readImport(r *http.Request) (text string, good bool, err error) {
	if err = form.Parse(r); err == nil {
		err = r.ParseMultipartForm(frame.MaxBody)
	}
	if errors.Is(err, http.ErrNotMultipart) {
		err = nil // the fields are there already
	}
	var long *http.MaxBytesError
	if errors.As(err, &long) || errors.Is(err, form.ErrTooLong) {
		return "", false, errTooMuch
	}
	if err != nil {
		return "", false, errors.Join(form.ErrUnreadable, err)
	}
	text, good = r.PostForm.Get("text"), r.PostForm.Get("mode") == "good"
	file, err := fileOf(r)
	switch {
	case err != nil:
		return text, good, err
	case file != "" && strings.TrimSpace(text) != "":
		return text, good, form.Missing("file", "there is a file, and text in the box too; send one of them, and choose the file again if it is that")
	case file != "":
		text = file
	case strings.TrimSpace(text) == "":
		return text, good, form.Missing("file", "choose a file, or paste its text into the box")
	}
	return text, good, nil
}

// fileOf is the text of the file that was sent, empty if there is none.
func fileOf(r *http.Request) (string, error) {
	if r.MultipartForm == nil {
		return "", nil
	}
	for _, header := range r.MultipartForm.File["file"] {
		return fileText(header)
	}
	return "", nil
}

func fileText(header *multipart.FileHeader) (string, error) {
	f, err := header.Open()
	if err != nil {
		return "", err
	}
	defer f.Close()
	text, err := io.ReadAll(f)
	return string(text), err
}

// take imports a text and reports. It returns the status of the answer.
func (p *pages) take(r *http.Request, text string, v *importView) (int, error) {
	there, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return 0, err
	}
	reading, err := exchange.ReadStockOver(strings.NewReader(text), p.nearFinder(), house.Items(there))
	if err != nil {
		return refused(v, err)
	}
	mode := exchange.AllOrNone
	if v.Good {
		mode = exchange.KeepGood
	}
	report := &importReport{Bad: reading.Bad, BadSaid: words.Count(len(reading.Bad), "row is", "rows are") + " bad"}
	v.Report = report
	if len(reading.Bad) > 0 && !v.Good {
		report.Title = "Nothing was written"
		report.Counts = words.Count(len(reading.Items), "row is", "rows are") + " good. Mend the others below and send it again, or keep the good ones."
		return http.StatusUnprocessableEntity, nil
	}
	result, err := exchange.Import(r.Context(), p.house.Store(), frame.By(r), reading, mode)
	if err != nil {
		return refused(v, err)
	}
	report.Wrote, report.Title = true, "The stock is written"
	report.Counts = words.Count(result.Added, "bottle", "bottles") + " added, " + words.Count(result.Changed, "bottle", "bottles") + " changed, " +
		words.Count(result.Same, "bottle", "bottles") + " as before."
	v.Text = strings.ToValidUTF8(reading.Rest(), "\uFFFD")
	return http.StatusOK, nil
}

// refused is a file that cannot be read, or a write that the store refused; what
// was sent is still in the box.
func refused(v *importView, err error) (int, error) {
	var own *house.Error
	if !errors.As(err, &own) || errors.Is(err, context.Canceled) {
		return 0, err
	}
	v.Report, v.Trouble = nil, words.Sentence(own.Message)+" Nothing was written."
	if errors.Is(err, house.ErrInvalid) {
		return http.StatusUnprocessableEntity, nil
	}
	return http.StatusServiceUnavailable, nil
}

// exportStock is every bottle of the house as CSV. The mark before it tells
// spreadsheets that it is UTF-8; without it some read accents as other letters,
// and write them so.
func (p *pages) exportStock(w http.ResponseWriter, r *http.Request) error {
	bottles, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return err
	}
	b := bytes.NewBufferString("\uFEFF")
	if err := exchange.WriteStock(b, house.Items(bottles)); err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", "text/csv; charset=utf-8; header=present")
	h.Set("Content-Disposition", `attachment; filename="stock.csv"`)
	if _, err := w.Write(b.Bytes()); err != nil {
		p.Log.DebugContext(r.Context(), "stock not sent", "err", err)
	}
	return nil
}
