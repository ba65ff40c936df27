package webui

import (
	"errors"
	"net/http"
	"net/url"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// undoPage takes back what a page has just written.
type undoPage struct {
	*frame.Frame
	open behind.Open
}

// undoneView says what was taken back, or why it was not.
type undoneView struct{ Said, Trouble, Back string }

func (p *undoPage) serve(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	written, err := part.ReadMark(r.PostForm.Get("undo"))
	if err != nil {
		return err
	}
	v := undoneView{Back: localAddress(r.PostForm.Get("back"))}
	status := http.StatusOK
	done, err := service.TakeBack(r.Context(), p.open().Store(), frame.By(r), written)
	switch {
	case errors.Is(err, house.ErrConflict):
		status = http.StatusConflict
		v.Trouble = say.It("undo.changed-since")
	case errors.Is(err, house.ErrNotFound):
		return frame.ErrGone
	case err != nil:
		if v.Trouble, status = frame.Told(err); v.Trouble == "" {
			return err
		}
	default:
		v.Said = say.It("undo.as-before", "Records", len(done))
	}
	return p.Write(w, r, status, "undone", "layout", v)
}

// localAddress is an address of these pages, the first if it is none.
func localAddress(text string) string {
	at, err := url.Parse(text)
	if err != nil || at.Host != "" || at.Scheme != "" || !strings.HasPrefix(at.Path, "/") || strings.HasPrefix(text, "//") {
		return "/"
	}
	return text
}
