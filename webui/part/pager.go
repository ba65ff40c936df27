package part

import (
	"net/url"
	"strconv"

	"counterpour/webui/form"
)

// Pager is one page of a list that may be long.
type Pager struct {
	First, Last, All int    // places of the entries on it, counted from 1
	Before, Next     string // addresses of the pages beside it; empty at an end
}

// PageField is the field of a form that says which page is asked for.
const PageField = "page"

// ReadPage reads which page is asked for, counted from 1; nothing is the first.
func ReadPage(f url.Values) (int, error) {
	written := f.Get(PageField)
	if written == "" {
		return 1, nil
	}
	n, err := strconv.Atoi(written)
	if err != nil || n < 1 {
		return 0, form.ErrUnreadable
	}
	return n, nil
}

// NewPager finds a page of so many entries, size on each; beyond the end it is the
// last. Its neighbours are at an address with other fields.
func NewPager(all, size, page int, path string, fields url.Values) Pager {
	last := max(1, (all+size-1)/size)
	page = min(page, last)
	at := func(n int) string {
		v := url.Values{}
		for name, values := range fields {
			v[name] = values
		}
		v.Del(PageField)
		if n > 1 {
			v.Set(PageField, strconv.Itoa(n))
		}
		return form.Link(path, v)
	}
	p := Pager{First: min(all, (page-1)*size+1), Last: min(all, page*size), All: all}
	if page > 1 {
		p.Before = at(page - 1)
	}
	if page < last {
		p.Next = at(page + 1)
	}
	return p
}

// Paged reports whether there is another page.
func (p Pager) Paged() bool { return p.Before != "" || p.Next != "" }

// PageOf returns the entries of a page.
func PageOf[T any](p Pager, all []T) []T { return all[max(0, p.First-1):p.Last] }
