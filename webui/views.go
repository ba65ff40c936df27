package webui

import (
	"fmt"
	htmltemplate "html/template"
	"io"
	"io/fs"
)

// views are the parsed templates, a set for each page: the layout, the parts
// that pages share, and the page's own file, which defines title and main.
type views struct {
	pages map[string]*htmltemplate.Template
}

// pageFiles are the pages; each has a file in templates.
var pageFiles = []string{"bench", "riffs", "riffs-use-up", "riffs-walk", "board", "specs", "spec", "import", "batch", "card", "print", "stock", "stock-bottle", "stock-made", "stock-import", "map", "training", "progress", "flight", "triangle", "starter", "tools", "login", "problem"}

// loadViews parses the templates. Those of a house with a login lead to it.
func loadViews(fsys fs.FS, s *statics, login bool) (*views, error) {
	v := &views{pages: map[string]*htmltemplate.Template{}}
	for _, name := range pageFiles {
		funcs := htmltemplate.FuncMap{"static": s.link, "here": func() string { return name }, "login": func() bool { return login }}
		t, err := htmltemplate.New(name).Funcs(funcs).ParseFS(fsys,
			"templates/layout.html", "templates/parts/*.html", "templates/"+name+".html")
		if err != nil {
			return nil, fmt.Errorf("webui: page %s: %w", name, err)
		}
		v.pages[name] = t
	}
	return v, nil
}

// render writes one part of a page; the part "layout" is the whole of it.
func (v *views) render(w io.Writer, page, part string, data any) error {
	t, ok := v.pages[page]
	if !ok {
		return fmt.Errorf("webui: there is no page %q", page)
	}
	if err := t.ExecuteTemplate(w, part, data); err != nil {
		return fmt.Errorf("webui: page %s: %w", page, err)
	}
	return nil
}
