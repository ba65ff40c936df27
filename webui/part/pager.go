package part

import (
	"net/url"
	"strconv"

	"counterpour/webui/form"
)

// Pager is one page of a long list.
type Pager struct {
	First, Last, All int    // numbers of its entries, from 1
	Before, Next     string // addresses of the previous and the next page; "" if there is none
}

// PageField is the query parameter of the page number.
const PageField = "page"

// ReadPage reads the page number, from 1; absent is 1.
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

// NewPager returns page number page of all entries, size on each. A number beyond the end
// is the last page. Links keep the other fields.
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

// Paged reports whether there is more than one page.
func (p Pager) Paged() bool { return p.Before != "" || p.Next != "" }

// PageOf returns the entries of a page.
func PageOf[T any](p Pager, all []T) []T { return all[max(0, p.First-1):p.Last] }
