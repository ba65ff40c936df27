package board

import (
	"sync"

	"counterpour/webui/access"
)

// How many lines may be open at once, in all and of one person. Common practice, no
// source: a bar has a screen or two at each station, and a telephone in each pocket.
const (
	mostLines       = 512
	mostOfOnePerson = 64
)

// lines counts the open ones. A line holds a connection for hours, so that without
// a limit one browser gone wild would leave none for the others.
type lines struct {
	mu  sync.Mutex
	all int
	of  map[access.Person]int // where people sign in
}

func newLines() *lines { return &lines{of: map[access.Person]int{}} }

// join takes a line, for a person if they are known, until leave; false if there is
// none left.
func (l *lines) join(p access.Person, known bool) (leave func(), ok bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.all >= mostLines || known && l.of[p] >= mostOfOnePerson {
		return nil, false
	}
	l.all++
	l.of[p]++
	return func() {
		l.mu.Lock()
		defer l.mu.Unlock()
		l.all--
		if l.of[p]--; l.of[p] == 0 {
			delete(l.of, p)
		}
	}, true
}
