package bench

import (
	"net/http"
	"net/url"
	"strings"

	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// sharePath is the address of the page that hands a draft on.
const sharePath = "/bench/share"

// sharePage hands a draft on to another phone.
type sharePage struct {
	Share *part.Share
	Guest *form.Guest
	Text  string
	Bench string // address of the draft on the bench
}

// ForGuest is who the draft is for.
func (v *sharePage) ForGuest() *form.Guest { return v.Guest }

// share shows the address of a draft for its guest. The draft stands in the address, so
// that nothing is kept for it.
func (p *pages) share(w http.ResponseWriter, r *http.Request) error {
	sent, err := readBenchForm(r)
	if err != nil {
		return err
	}
	text := strings.TrimSpace(sent.Text)
	if text == "" {
		http.Redirect(w, r, sent.Guest.Address(Path), http.StatusSeeOther)
		return nil
	}
	at := draftQuery(text, &sent.Guest)
	shared, err := part.ShareOf(access.At(r, Path, at), p.nameOf(text))
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "share", "layout", &sharePage{Share: shared, Guest: &sent.Guest, Text: text, Bench: form.Link(Path, at)})
}

// nameOf is the name of a draft, or what stands for it.
func (p *pages) nameOf(text string) string {
	if read, err := p.bar.ReadRest(text); err == nil && read.Spec.Name != "" {
		return read.Spec.Name
	}
	return say.It("bench.without-a-name")
}

// draftQuery is the query that puts a draft on the bench for a guest.
func draftQuery(text string, who *form.Guest) url.Values {
	v := url.Values{"text": {text}}
	who.AddTo(v)
	return v
}

// draftAddress is the address of a page of the bench with a draft, for a guest.
func draftAddress(path, text string, who *form.Guest) string {
	if strings.TrimSpace(text) == "" {
		return who.Address(path)
	}
	return form.Link(path, draftQuery(text, who))
}
