package naming

import (
	"strings"

	lru "github.com/hashicorp/golang-lru/v2"
)

// Keeper is a [Finder] that keeps what names mean to it from one reading to the next. It must
// answer alike as long as it keeps that.
type Keeper interface {
	Finder
	Kept() *Kept
}

// Kept is the ingredients that names meant in their places, of those that were asked for last.
// It is safe for concurrent use. Nil keeps nothing.
type Kept struct{ found *lru.Cache[question, Found] }

// How many names are kept, and of how many bytes each at most: half a megabyte of them.
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
	return &Kept{found}
}

// get returns what a name meant in its place, if that is kept.
func (k *Kept) get(q question) (Found, bool) {
	if k == nil {
		return Found{}, false
	}
	return k.found.Get(q)
}

// put keeps what a name means in its place, but for a fault: whoever has one may complete it.
func (k *Kept) put(q question, f Found) {
	if k == nil || f.Profile == nil || f.Fault != nil || len(q.name) > longestKept {
		return
	}
	for _, s := range []*string{&q.name, &f.As, &f.Dropped, &f.Infusion} {
		*s = strings.Clone(*s) // or the text of the draft would be kept with it
	}
	k.found.Add(q, f)
}
