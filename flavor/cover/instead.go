package cover

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Offered is a drink to offer in place of one that nothing keeps.
type Offered struct {
	Spec     *flavor.Spec
	Distance float64 // from the drink that was asked for, in just-noticeable differences
	Notice   sense.Notice
}

// Mixed is a drink of a menu in its glass.
type Mixed struct {
	spec  *flavor.Spec
	drink *mix.Drink
	glass *sense.Percept
	err   error // why it cannot be mixed
}

// MixAll mixes the drinks of a menu, for [Finder.Nearest] to look through again and
// again.
func (f *Finder) MixAll(menu []*flavor.Spec) []Mixed {
	out := make([]Mixed, len(menu))
	for i, s := range menu {
		m := Mixed{spec: s}
		if m.drink, m.err = f.mixer.Mix(s); m.err == nil {
			m.glass = f.space.Percept(s, m.drink)
		}
		out[i] = m
	}
	return out
}

// Nearest returns the drink of a menu whose glass is nearest to that of spec, of
// those that the guest may have and whose every pour can be poured; nil if there is
// none. Of two as near it is the one whose name comes first. It fails if spec or a
// drink that can be poured cannot be mixed.
func (f *Finder) Nearest(spec *flavor.Spec, menu []Mixed, g *guest.Guest, pourable func(*flavor.Profile) bool) (*Offered, error) {
	drink, err := f.mixer.Mix(spec)
	if err != nil {
		return nil, err
	}
	asked := f.space.Percept(spec, drink)
	var best *Offered
	for i := range menu {
		m, s := &menu[i], menu[i].spec
		if !canPour(s, pourable) || !g.MayHaveAll(s) {
			continue
		}
		if m.err != nil {
			return nil, m.err
		}
		if g.TooStrong(m.drink.ABV) {
			continue
		}
		steps := sense.Between(asked, m.glass)
		d := steps.Total()
		if best == nil || d < best.Distance || d == best.Distance && strings.Compare(s.Name, best.Spec.Name) < 0 {
			best = &Offered{Spec: s, Distance: d, Notice: sense.NoticeOf(d, false)}
		}
	}
	return best, nil
}

// MayServe reports whether a guest may have a drink as it is written. It fails if its
// strength is asked for and it cannot be mixed.
func (f *Finder) MayServe(g *guest.Guest, s *flavor.Spec) (bool, error) {
	if !g.MayHaveAll(s) {
		return false, nil
	}
	if g.MaxABV <= 0 {
		return true, nil
	}
	drink, err := f.mixer.Mix(s)
	if err != nil {
		return false, err
	}
	return !g.TooStrong(drink.ABV), nil
}

func canPour(s *flavor.Spec, pourable func(*flavor.Profile) bool) bool {
	for i := range s.Pours {
		if !pourable(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}
