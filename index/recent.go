package index

import (
	"strings"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/flavor"
)

// Limits of what is kept of written names that are no name: each keystroke in a draft asks
// for most of them again.
const (
	mostRecentNear  = 512
	mostRecentSlips = 2048
)

// recent holds what was worked out for the names that were asked for last. It is safe for
// concurrent use.
type recent struct {
	near  *lru.Cache[string, []*flavor.Profile] // the nearest, before they are sorted by what is allowed and favoured
	slips *lru.Cache[string, slipped]
}

// slipped is what a name is a misspelling of, nil for nothing.
type slipped struct{ profile *flavor.Profile }

func newRecent() *recent {
	near, err := lru.New[string, []*flavor.Profile](mostRecentNear)
	if err != nil {
		panic(err) // only for a size below 1
	}
	slips, err := lru.New[string, slipped](mostRecentSlips)
	if err != nil {
		panic(err)
	}
	return &recent{near: near, slips: slips}
}

// slipOf returns the one ingredient of whose name words are a misspelling, wherever it is
// allowed; nil if there is none.
func (x *Index) slipOf(words []string) *flavor.Profile {
	key := strings.Join(words, " ")
	if s, ok := x.recent.slips.Get(key); ok {
		return s.profile
	}
	p := x.names.slip(words)
	x.recent.slips.Add(key, slipped{p})
	return p
}
