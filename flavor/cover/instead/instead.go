// Package instead finds the drink of a menu to offer in place of one that nothing keeps.
package instead

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

// Menu is the drinks of a menu in their glasses, to be looked through again and again. It
// is safe for concurrent use.
type Menu struct {
	mixer  *mix.Mixer
	space  *sense.Space
	drinks []mixed
}

// mixed is a drink of a menu as it is sensed.
type mixed struct {
	spec    *flavor.Spec
	drink   *mix.Drink
	percept *sense.Percept
	err     error // why it cannot be mixed
}

// Mix mixes the drinks of a menu.
func Mix(mixer *mix.Mixer, space *sense.Space, menu []*flavor.Spec) *Menu {
	out := &Menu{mixer, space, make([]mixed, len(menu))}
	for i, s := range menu {
		m := mixed{spec: s}
		if m.drink, m.err = mixer.Mix(s); m.err == nil {
			m.percept = space.Percept(s, m.drink)
		}
		out.drinks[i] = m
	}
	return out
}

// Nearest returns the drink of the menu whose glass is nearest to that of spec, of
// those that the guest may have and whose every pour can be poured; nil if there is
// none. Of two as near it is the one whose name comes first. It fails if spec or a
// drink that can be poured cannot be mixed.
func (m *Menu) Nearest(spec *flavor.Spec, g *guest.Guest, pourable func(*flavor.Profile) bool) (*Offered, error) {
	drink, err := m.mixer.Mix(spec)
	if err != nil {
		return nil, err
	}
	asked := m.space.Percept(spec, drink)
	var best *Offered
	for i := range m.drinks {
		x, s := &m.drinks[i], m.drinks[i].spec
		if !canPour(s, pourable) || !g.MayHaveAll(s) {
			continue
		}
		if x.err != nil {
			return nil, x.err
		}
		if g.TooStrong(x.drink.ABV) {
			continue
		}
		steps := sense.Between(asked, x.percept)
		d := steps.Total()
		if best == nil || d < best.Distance || d == best.Distance && strings.Compare(s.Name, best.Spec.Name) < 0 {
			best = &Offered{Spec: s, Distance: d, Notice: sense.NoticeOf(d, false)}
		}
	}
	return best, nil
}

func canPour(s *flavor.Spec, pourable func(*flavor.Profile) bool) bool {
	for i := range s.Pours {
		if !pourable(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}
