package listing

import (
	"context"

	"counterpour/flavor/cover/search"
)

// besides returns what the trade pours for the only thing that went and a search left out
// of its list, as too far behind the best: each is looked for by itself, since a bartender
// wants to hear of it beside what comes nearer.
func (l *List) besides(ctx context.Context, listed []search.Filling) ([]search.Filling, error) {
	have := make(map[search.Combination]bool, len(listed))
	for i := range listed {
		have[search.Combine(listed[i].Parts...)] = true
	}
	var out []search.Filling
	for _, parts := range l.Practice.Choices() {
		if have[search.Combine(parts...)] {
			continue
		}
		x, found, err := l.byItself(ctx, parts, true)
		if err == nil && !found && len(l.Moves) > 0 {
			x, found, err = l.byItself(ctx, parts, false) // more amounts are tried where nothing else moves
		}
		if err != nil {
			return nil, err
		}
		if found {
			out = append(out, x)
		}
	}
	return out, nil
}

// byItself returns the best filling of exactly some parts, if there is one that may be
// served; with moves, other pours may move.
func (l *List) byItself(ctx context.Context, parts []int, moves bool) (x search.Filling, found bool, err error) {
	p := l.Problem(1<<len(parts), 0)
	if !moves {
		p.Moves = nil
	}
	p.Tail, p.Most = 0, len(parts) // however far behind a part of them alone
	p.Parts = make([]search.Part, len(parts))
	own := make([]int, len(parts))
	for k, i := range parts {
		p.Parts[k], own[k] = l.Entries[i], k
	}
	if standing, known := l.Practice.Standing(parts); known {
		p.Known = map[search.Combination]float64{search.Combine(own...): standing}
	} else {
		p.Known = nil
	}
	named := func(y *search.Filling) search.Filling {
		z := *y
		z.Parts = make([]int, len(y.Parts))
		for k, i := range y.Parts {
			z.Parts[k] = parts[i]
		}
		return z
	}
	p.Allows = func(y *search.Filling) bool {
		z := named(y)
		return len(y.Parts) == len(parts) && l.Allows(&z)
	}
	p.Choose = func(roundings []search.Filling) (int, error) {
		all := make([]search.Filling, len(roundings))
		for i := range roundings {
			all[i] = named(&roundings[i])
		}
		return l.Choose(all)
	}
	result, err := search.Find(ctx, p)
	if err != nil || len(result.Fillings) == 0 {
		return x, false, err
	}
	return named(&result.Fillings[0]), true, nil
}
