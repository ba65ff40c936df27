package riffs

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"

	"counterpour/webui/form"
)

// How many are listed.
const defaultRiffs = 10

var riffCounts = []int{5, 10, 20, 40}

// listing is how many are wanted, and which list of many.
type listing struct {
	Limit int
	Seed  uint64
}

// readListing reads a number and a seed; the seed of the button that asks for
// others comes before the one that is kept.
func readListing(sent url.Values) (l listing, err error) {
	l.Limit = defaultRiffs
	if s := sent.Get("limit"); s != "" {
		if l.Limit, err = strconv.Atoi(s); err != nil || !slices.Contains(riffCounts, l.Limit) {
			return l, fmt.Errorf("%w: limit %q", form.ErrUnreadable, s)
		}
	}
	for _, field := range []string{"others", "seed"} {
		s := sent.Get(field)
		if s == "" {
			continue
		}
		if l.Seed, err = strconv.ParseUint(s, 10, 64); err != nil {
			return l, fmt.Errorf("%w: %s %q", form.ErrUnreadable, field, s)
		}
		break
	}
	return l, nil
}

func (l *listing) values(v url.Values) {
	if l.Limit != defaultRiffs {
		v.Set("limit", strconv.Itoa(l.Limit))
	}
	if l.Seed != 0 {
		v.Set("seed", strconv.FormatUint(l.Seed, 10))
	}
}

// again is what asks for another list: the form that is sent again, and the
// address of this one.
type again struct {
	Form, Link string
	List       listing
}

// Next is the seed of another list.
func (l listing) Next() uint64 { return l.Seed + 1 }

// Counts are the numbers to choose from.
func (l listing) Counts() []form.Option {
	var out []form.Option
	for _, n := range riffCounts {
		out = append(out, form.Option{Value: strconv.Itoa(n), Name: strconv.Itoa(n), Chosen: n == l.Limit})
	}
	return out
}
