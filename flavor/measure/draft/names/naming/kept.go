package naming

import (
	"strings"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/flavor"
)

// Keeper is a [Finder] that keeps what names mean to it from one reading to the next. It must
// answer alike as long as it keeps that.
type Keeper interface {
	Finder
	Kept() *Kept
}

// Kept is what names meant in their places, of those that were asked for last: ingredients, and apart from
// them that a name means nothing or is to be asked, so that the words of many titles do not drive out what is
// poured. It is safe for concurrent use. Nil keeps nothing.
type Kept struct {
	found *lru.Cache[question, Found]
	asked *lru.Cache[question, asked]
}

// asked is what is asked about a name.
type asked struct {
	fault flavor.DataFault
	left  question // of which the fault does not say yet what is nearest
	open  bool     // there is one
}

// How many names are kept of each, and of how many bytes each at most: a megabyte of them.
const (
	mostKept    = 2048
	longestKept = 64
)

// NewKept returns what has yet to be filled.
func NewKept() *Kept {
	found, err := lru.New[question, Found](mostKept)
	if err != nil {
		panic(err) // only for a size below 1
	}
	asked, err := lru.New[question, asked](mostKept)
	if err != nil {
		panic(err)
	}
	return &Kept{found, asked}
}

// get returns what a name meant in its place, if that is kept. A fault is the caller's own, to be completed
// in its memory.
func (k *Kept) get(q question, m *memory) (Found, bool) {
	if k == nil {
		return Found{}, false
	}
	if f, ok := k.found.Get(q); ok {
		return f, true
	}
	a, ok := k.asked.Get(q)
	if !ok {
		return Found{}, false
	}
	own := a.fault
	if a.open {
		m.left[&own] = a.left
	}
	return Found{Fault: &own}, true
}

// put keeps what a name means in its place.
func (k *Kept) put(q question, f Found, m *memory) {
	if k == nil || len(q.name) > longestKept {
		return
	}
	switch {
	case f.Fault != nil && f == (Found{Fault: f.Fault}):
		a := asked{fault: *f.Fault}
		a.left, a.open = m.left[f.Fault]
		for _, s := range []*string{&q.name, &a.fault.Value, &a.left.name} {
			*s = strings.Clone(*s)
		}
		k.asked.Add(q, a)
	case f.Profile != nil && f.Fault == nil:
		for _, s := range []*string{&q.name, &f.As, &f.Dropped, &f.Infusion} {
			*s = strings.Clone(*s) // or the text of the draft would be kept with it
		}
		k.found.Add(q, f)
	}
}
