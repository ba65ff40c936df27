package behind

import (
	"context"

	"counterpour/api/service/evening"
	"counterpour/flavor/guest"
)

// EveningOf says what can be poured of the menu of a shift, for a guest; parts is the most
// substitutes in one cover. Its drinks stand in the order of the menu.
func EveningOf(ctx context.Context, b Bar, s *Shift, g guest.Guest, parts int) (*evening.Answer, error) {
	r := evening.Request{Stock: s.Stock, Out: s.Out, Guest: g, Tastings: s.Tastings, Parts: parts}
	for i := range s.Menu {
		r.Menu = append(r.Menu, &s.Menu[i].Spec)
	}
	return evening.Of(ctx, b, r)
}
