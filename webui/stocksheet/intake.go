package stocksheet

import (
	"bytes"
	"context"
	"errors"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// mostFile is the most bytes of a file, which leaves room for the rest of its
// form.
const mostFile = frame.MaxBody - 2<<10

// errTooMuch is a file or a text that is longer than a form may be.
var errTooMuch = errors.New("webui: the file is too long")

// takeIn reads a file of bottles, shows what it makes of it, and takes in what
// is good once it is told to. All that was settled on the way travels in the form.
func (p *pages) takeIn(w http.ResponseWriter, r *http.Request) error {
	v := &view{Columns: columnNotes(), Most: mostFile}
	if r.Method != http.MethodPost {
		return p.Write(w, r, http.StatusOK, "stock-import", "layout", v)
	}
	text, err := readText(r)
	v.Text = strings.ToValidUTF8(text, "\uFFFD")
	status := http.StatusOK
	switch {
	case errors.Is(err, errTooMuch):
		status, v.Trouble = http.StatusRequestEntityTooLarge, say.It("stocksheet.too-long")
	case flavor.DataFaultsOf(err) != nil:
		status, v.Trouble = http.StatusUnprocessableEntity, words.Sentence(form.Message(err))
	case err != nil:
		return err
	default:
		if status, err = p.consider(r, text, v); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "stock-import", "layout", v)
}

// consider reads a text with what was settled about it, takes in its good rows if
// that is asked for, and shows the rest. It returns the status of the answer.
func (p *pages) consider(r *http.Request, text string, v *view) (int, error) {
	there, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return 0, err
	}
	bottles := house.Items(there)
	settled := readSettled(r.PostForm)
	settled.House = p.house.Settings().Currency
	sheet, err := exchange.ReadSheet(strings.NewReader(text), part.NewNearFinder(p.bar, p.house.Shelf()), bottles, settled)
	if err == nil && typedOver(&settled, sheet, r.PostForm) {
		sheet, err = exchange.ReadSheet(strings.NewReader(text), part.NewNearFinder(p.bar, p.house.Shelf()), bottles, settled)
	}
	if err != nil {
		return refused(v, err)
	}
	if !access.May(r.Context(), access.Lead) { // a preview is refused too, since nothing can follow it
		t := frame.TroubleOf(frame.ErrNotTheirs)
		v.Trouble = say.It("stocksheet.not-theirs", "Title", t.Title, "Text", t.Text)
		v.show(sheet, settled, p.house, bottles)
		return t.Status, nil
	}
	if r.PostForm.Get("do") != "take" {
		v.show(sheet, settled, p.house, bottles)
		return http.StatusOK, nil
	}
	reading := sheet.Reading()
	result, err := exchange.Import(r.Context(), p.house.Store(), frame.By(r), reading, exchange.KeepGood)
	if err != nil {
		v.show(sheet, settled, p.house, bottles)
		return refused(v, err)
	}
	v.Undo = part.UndoOf(result.Changes, "/stock")
	v.Taken = say.It("stocksheet.taken", "Added", result.Added, "Changed", result.Changed, "Same", result.Same,
		"Stays", house.FirstFew(result.Stays), "Words", result.Words)
	v.Text = strings.ToValidUTF8(reading.Rest(), "\uFFFD")
	if len(reading.Bad) == 0 {
		return http.StatusOK, nil
	}
	rest, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return 0, err
	}
	bottles, settled = house.Items(rest), settledOfRest(sheet, settled)
	if sheet, err = exchange.ReadSheet(strings.NewReader(v.Text), part.NewNearFinder(p.bar, p.house.Shelf()), bottles, settled); err != nil {
		return refused(v, err)
	}
	v.show(sheet, settled, p.house, bottles)
	return http.StatusOK, nil
}

// readText returns the text of the file, or what was pasted or read before.
func readText(r *http.Request) (text string, err error) {
	if err = form.Parse(r); err == nil {
		err = r.ParseMultipartForm(frame.MaxBody)
	}
	if errors.Is(err, http.ErrNotMultipart) {
		err = nil // the fields are there already
	}
	var long *http.MaxBytesError
	if errors.As(err, &long) || errors.Is(err, form.ErrTooLong) {
		return "", errTooMuch
	}
	if err != nil {
		return "", errors.Join(form.ErrUnreadable, err)
	}
	text = r.PostForm.Get("text")
	file, err := fileOf(r)
	switch {
	case err != nil:
		return text, err
	case file != "" && strings.TrimSpace(text) != "" && r.PostForm.Get("read") == "":
		return text, form.Missing("file", say.It("stocksheet.file-and-text"))
	case file != "":
		text = file // in place of the one that was read before, and all that was settled about it
		r.PostForm = url.Values{"text": {file}}
	case strings.TrimSpace(text) == "":
		return text, form.Missing("file", say.It("stocksheet.choose-a-file"))
	}
	return text, nil
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

// refused is a file that cannot be read, or a write that the store refused; what
// was sent is still in the box.
func refused(v *view, err error) (int, error) {
	var own *house.Error
	if !errors.As(err, &own) || errors.Is(err, context.Canceled) {
		return 0, err
	}
	v.Trouble = say.It("stocksheet.nothing-written", "Trouble", words.Sentence(own.Message))
	if errors.Is(err, house.ErrInvalid) {
		return http.StatusUnprocessableEntity, nil
	}
	return http.StatusServiceUnavailable, nil
}

// writeOut is every bottle of the house as CSV. The mark before it tells
// spreadsheets that it is UTF-8; without it some read accents as other letters,
// and write them so.
func (p *pages) writeOut(w http.ResponseWriter, r *http.Request) error {
	bottles, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return err
	}
	names, err := house.All[house.Name](r.Context(), p.house.Store())
	if err != nil {
		return err
	}
	b := bytes.NewBufferString("\uFEFF")
	if err := exchange.WriteStock(b, house.Items(bottles), house.Items(names)...); err != nil {
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
