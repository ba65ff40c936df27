package frame

import (
	"fmt"
	htmltemplate "html/template"
	"io"
	"io/fs"
	"path"
	"strings"

	"counterpour/flavor"
)

// views are the parsed templates, a set for each page: the layout, the parts
// that pages share, and the page's own file, which defines title and main.
type views struct {
	pages map[string]*htmltemplate.Template
}

// loadViews parses the templates: every file in the folder is a page, but for the
// layout. Those of a house with a login lead to it. What only a lead may send is
// left out of the pages of those who may not: templates ask with may; and with
// stale whether what they show may be old.
func loadViews(fsys fs.FS, f *Frame, login, may bool, stale func() bool) (*views, error) {
	v := &views{pages: map[string]*htmltemplate.Template{}}
	files, err := fs.Glob(fsys, "templates/*.html")
	if err != nil {
		return nil, fmt.Errorf("frame: templates: %w", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(path.Base(file), ".html")
		if name == "layout" {
			continue
		}
		funcs := htmltemplate.FuncMap{"static": f.statics.link, "house": f.house, "here": func() string { return name }, "login": func() bool { return login }, "may": func() bool { return may }, "stale": stale,
			"crosscontact": func() string { return flavor.CrossContact }}
		t, err := htmltemplate.New(name).Funcs(funcs).ParseFS(fsys,
			"templates/layout.html", "templates/parts/*.html", file)
		if err != nil {
			return nil, fmt.Errorf("frame: page %s: %w", name, err)
		}
		v.pages[name] = t
	}
	return v, nil
}

// render writes one part of a page; the part "layout" is the whole of it.
func (v *views) render(w io.Writer, page, part string, data any) error {
	t, ok := v.pages[page]
	if !ok {
		return fmt.Errorf("frame: there is no page %q", page)
	}
	if err := t.ExecuteTemplate(w, part, data); err != nil {
		return fmt.Errorf("frame: page %s: %w", page, err)
	}
	return nil
}
