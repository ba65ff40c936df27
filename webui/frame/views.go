package frame

import (
	"fmt"
	htmltemplate "html/template"
	"io"
	"io/fs"
	"path"
	"strings"
	"sync"

	"counterpour/data/stamp"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/say"
)

// views are the templates, one set per page: layout, shared parts, and the page's own
// file, which defines title and main. A page is parsed when it is first shown, to keep
// the start fast.
type views struct {
	shared *htmltemplate.Template // layout and parts
	pages  map[string]func() (*htmltemplate.Template, error)
}

// loadViews finds the templates: every file in the folder except the layout is a page.
// With login, pages link to the login page. Templates call may to leave out what only a
// lead may send, and stale to ask whether what they show may be out of date.
func loadViews(fsys fs.FS, f *Frame, login, may bool, stale func() bool) (*views, error) {
	files, err := fs.Glob(fsys, "templates/*.html")
	if err != nil {
		return nil, fmt.Errorf("frame: templates: %w", err)
	}
	funcs := htmltemplate.FuncMap{"static": f.statics.link, "house": f.house, "program": stamp.Read().String, "here": func() string { return "" }, "login": func() bool { return login }, "may": func() bool { return may }, "stale": stale,
		"crosscontact": func() string { return flavor.CrossContact }, "place": place, "guest": guestOf}
	v := &views{pages: map[string]func() (*htmltemplate.Template, error){}}
	parts, err := fs.Glob(fsys, "templates/parts/*.html")
	if err != nil {
		return nil, fmt.Errorf("frame: parts: %w", err)
	}
	v.shared = htmltemplate.New("").Funcs(funcs)
	for _, file := range append([]string{"templates/layout.html"}, parts...) {
		if err := add(v.shared, fsys, file); err != nil {
			return nil, fmt.Errorf("frame: shared templates: %w", err)
		}
	}
	for _, file := range files {
		if name := strings.TrimSuffix(path.Base(file), ".html"); name != "layout" {
			v.pages[name] = sync.OnceValues(func() (*htmltemplate.Template, error) { return v.parse(fsys, name, file) })
		}
	}
	return v, nil
}

// parse parses the template of a page.
func (v *views) parse(fsys fs.FS, name, file string) (*htmltemplate.Template, error) {
	t, err := v.shared.Clone()
	if err == nil {
		err = add(t.Funcs(htmltemplate.FuncMap{"here": func() string { return name }}), fsys, file)
	}
	if err != nil {
		return nil, fmt.Errorf("frame: page %s: %w", name, err)
	}
	return t, nil
}

// add parses a file, with its sentences in their places, beside what a template holds.
func add(t *htmltemplate.Template, files fs.FS, file string) error {
	source, err := fs.ReadFile(files, file)
	if err != nil {
		return err
	}
	text, err := say.InTemplate(file, string(source))
	if err == nil {
		_, err = t.New(path.Base(file)).Parse(text)
	}
	return err
}

// render renders one part of a page; the part "layout" is the whole page.
func (v *views) render(w io.Writer, page, part string, data any) error {
	parsed, ok := v.pages[page]
	if !ok {
		return fmt.Errorf("frame: there is no page %q", page)
	}
	t, err := parsed()
	if err != nil {
		return err
	}
	if err := t.ExecuteTemplate(w, part, data); err != nil {
		return fmt.Errorf("frame: page %s: %w", page, err)
	}
	return nil
}

// guestOf returns who a page is shown for, without wishes if it is shown for everyone; nil
// if it knows of no guests.
func guestOf(page any) *form.Guest {
	if p, ok := page.(interface{ ForGuest() *form.Guest }); ok {
		return p.ForGuest()
	}
	return nil
}

// place returns the address of a page as it is reached from another: for the same guest, if
// that one is shown for a guest. Who is served is left by a link that says so, never by the
// way.
func place(from any, path string) string {
	if guest := guestOf(from); guest != nil {
		return guest.Address(path)
	}
	return path
}
