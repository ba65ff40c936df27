package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
	"counterpour/flavor/technique"
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
	glass *sense.Glass
	err   error // why it cannot be mixed
}

// MixAll mixes the drinks of a menu, for [Finder.Nearest] to look through again and
// again.
func (f *Finder) MixAll(menu []*flavor.Spec) []Mixed {
	out := make([]Mixed, len(menu))
	for i, s := range menu {
		m := Mixed{spec: s}
		if m.drink, m.err = f.mixer.Mix(s); m.err == nil {
			m.glass = f.space.Glass(s, m.drink)
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
	asked := f.space.Glass(spec, drink)
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

func canPour(s *flavor.Spec, pourable func(*flavor.Profile) bool) bool {
	for i := range s.Pours {
		if !pourable(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// addLeftOut adds the drink with nothing poured in place of what went, unless that is
// far from it, or no drink: it stays in balance, and ranks before every cover or lies no
// further than any, or no cover keeps the balance. It is not the best beside a relative of
// what went. Where nothing covers a foam or a milk, what is left is offered however far it
// lies, if it is a drink in balance: a guest who avoids milk is better told of another drink
// than of none.
func (t *task) addLeftOut(to *Result) error {
	softened := len(to.Covers) == 0 && len(t.gap.Keep) > 1 && !t.gap.Any(func(p *flavor.Profile) bool {
		return p.Class.Kin() != flavor.KinFoam && p.Class.Kin() != flavor.KinMilk
	})
	if t.leftOut > LastJND && !softened {
		return nil
	}
	x, err := t.without()
	if err != nil {
		return err
	}
	if t.req.Guest.TooStrong(x.drink.ABV) {
		return nil // without its vermouth a drink is stronger
	}
	nearer := slices.ContainsFunc(to.Covers, func(c Cover) bool { return c.Distance < x.distance })
	best := len(to.Covers) == 0 || to.Unbalanced || !nearer && x.rank < to.Covers[0].rank && !t.relative(&to.Covers[0])
	balanced := x.score >= t.leastScore()
	if t.leftOut > NearJND && (!balanced || nearer && !best) {
		return nil
	}
	c := t.describe(x)
	to.LeftOut, to.LeftOutBest = &c, best && balanced
	to.Near = to.Near || c.Keeps
	return nil
}

// without is the drink with nothing poured in place of what went; stirred, if it was shaken
// for the sake of that alone.
func (t *task) without() (*idea, error) {
	x, err := t.pour(&search.Filling{})
	wants := func(p flavor.Pour) bool { return technique.WantsShaking(p.Profile) }
	if err != nil || !x.spec.Method.Shaken() || !slices.ContainsFunc(t.req.Spec.Pours, wants) || slices.ContainsFunc(x.spec.Pours, wants) {
		return x, err
	}
	x.spec.Method = flavor.Stir
	if err := t.inGlass(x); err != nil {
		return nil, err
	}
	if x.score, err = t.finder.judge.ScoreOnly(&x.spec); err != nil {
		return nil, err
	}
	t.rank(x)
	return x, nil
}

// relative reports whether a cover keeps the drink by what the trade pours, or by one bottle
// of the class of what went: then it is poured rather than nothing, however little went.
func (t *task) relative(c *Cover) bool {
	return c.Keeps && (c.Custom || len(c.Parts) == 1 && len(t.gap.Gone) == 1 && c.Parts[0].Profile.Class == t.gap.Gone[0].Profile.Class)
}
