package coaching

import (
	"cmp"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"time"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

// RoundWish says what kind of round is wanted.
type RoundWish struct {
	Kind    drill.Kind        // empty for the kind that the learner needs most
	Axis    ratio.Axis        // only if HasAxis
	HasAxis bool              // otherwise an axis is chosen
	Not     drill.Kind        // the kind of the round before, which is not repeated; used only if Kind is empty
	Size    float64           // just-noticeable steps; 0 for the size that suits the learner's results
	Avoid   []flavor.Allergen // no drink of the round holds them; what is unknown counts as present
	Seen    []drill.Mark      // drinks of the rounds before, which are not drawn again while others are left
}

// RoundRequest asks for a round for a learner, who may have no results yet.
type RoundRequest struct {
	Learner drill.Learner
	Wish    RoundWish
	At      time.Time  // decides which skills are due
	Rand    *rand.Rand // breaks ties
}

// Round makes a round with t: of the bar's own menu where a drink of it can be asked about
// by about the size wanted and was not seen before, else of a proven drink. If the wish
// leaves the kind open, one that cannot be had in this house, such as covers from an empty
// stock, gives way to the next one that is needed.
func Round(t *drill.Trainer, r RoundRequest) (*drill.Round, error) {
	if r.Wish.Kind != "" {
		return roundOf(t, r.Wish.Kind, &r)
	}
	kind := r.Learner.NextBut(r.Wish.Not, r.At, 0).Kind
	round, err := roundOf(t, kind, &r)
	for _, other := range drill.Kinds() {
		if fault := (*flavor.DataFault)(nil); !errors.As(err, &fault) {
			break
		}
		if other != kind && other != r.Wish.Not {
			round, err = roundOf(t, other, &r)
		}
	}
	return round, err
}

// roundOf makes a round of a kind. If the wish leaves the axis open, it tries one axis after
// another, since not every axis of a drink can be spoilt by the size asked for.
func roundOf(t *drill.Trainer, kind drill.Kind, r *RoundRequest) (*drill.Round, error) {
	skills := skillsToTry(r.Learner, kind, r.At, r.Rand)
	if r.Wish.HasAxis {
		skills = slices.DeleteFunc(skills, func(k drill.Skill) bool { return k.Axis != r.Wish.Axis.String() })
	}
	asks := make([]drill.RoundRequest, len(skills))
	for i, k := range skills {
		axis, _ := ratio.ParseAxis(k.Axis)
		asks[i] = drill.RoundRequest{Kind: kind, Axis: axis, Size: cmp.Or(r.Wish.Size, k.Stairs.Next()), Seed: r.Rand.Uint64(), Avoid: drill.AvoidedOf(r.Wish.Avoid)}
	}
	if round, err := ofMenu(t, asks, r); round != nil || err != nil {
		return round, err
	}
	err := fmt.Errorf("no skill of kind %q", kind)
	var seen *drill.Round // the first whose drinks the learner has had before
	for _, ask := range asks {
		round, fresh, failed := unseen(t, ask, r)
		if fresh {
			return round, nil
		}
		if failed == nil {
			seen = cmp.Or(seen, round)
			continue
		}
		err = failed
		if fault := (*flavor.DataFault)(nil); !errors.As(err, &fault) {
			return nil, err
		}
	}
	if seen != nil {
		return seen, nil
	}
	return nil, err
}

// menuTimes is how far a round of the menu may lie from the size wanted, as a factor: a menu
// has few drinks, and one that is asked about at another size teaches as much.
const menuTimes = 2.0

// ofMenu makes a round of the bar's own menu; nil if none is to be had that suits. A family is
// read off a ratio without a name, so that it is none of the menu, which would soon repeat
// itself.
func ofMenu(t *drill.Trainer, asks []drill.RoundRequest, r *RoundRequest) (*drill.Round, error) {
	for _, ask := range asks {
		if ask.Kind == drill.KindFamily {
			continue
		}
		ask.Menu = true
		round, fresh, err := unseen(t, ask, r)
		if fault := (*flavor.DataFault)(nil); errors.As(err, &fault) {
			continue
		}
		if err != nil {
			return nil, err
		}
		near := round != nil && round.Size <= menuTimes*ask.Size && round.Size >= ask.Size/menuTimes
		if fresh && (near || ask.Kind == drill.KindGuess) { // how far off a guess may be is not for the drink to say
			return round, nil
		}
	}
	return nil, nil
}

// How a drink is found that was not seen before: so many draws, each of a size that is
// larger by a factor, since the few drinks of one size may all have been seen.
const (
	drawsForUnseen = 4
	largerEachDraw = 1.1
)

// unseen makes a round of drinks that the learner has not had before; fresh is false if all
// that were drawn had been.
func unseen(t *drill.Trainer, ask drill.RoundRequest, r *RoundRequest) (round *drill.Round, fresh bool, err error) {
	for n := range drawsForUnseen {
		next, err := t.Round(ask)
		if err != nil && n > 0 {
			break // the first one is still a round
		}
		if err != nil {
			return nil, false, err
		}
		if !slices.ContainsFunc(next.Marks(), func(m drill.Mark) bool { return slices.Contains(r.Wish.Seen, m) }) {
			return next, true, nil
		}
		round = cmp.Or(round, next)
		ask.Seed, ask.Size = r.Rand.Uint64(), min(drill.MaxSize, ask.Size*largerEachDraw)
	}
	return round, false, nil
}

// skillsToTry lists the skills of a kind, those that are due or new first. Within each
// group the order is random, so that the order of rounds does not give the axis away.
func skillsToTry(l drill.Learner, kind drill.Kind, now time.Time, rng *rand.Rand) []drill.Skill {
	var first, rest []drill.Skill
	all := drill.Skills()
	for _, i := range rng.Perm(len(all)) {
		s := all[i]
		if s.Kind != kind {
			continue
		}
		if at := slices.IndexFunc(l.Skills, func(o drill.Skill) bool { return o.Kind == s.Kind && o.Axis == s.Axis }); at >= 0 {
			s = l.Skills[at]
		}
		if s.Rounds == 0 || !s.Repeat.Due.After(now) {
			first = append(first, s)
		} else {
			rest = append(rest, s)
		}
	}
	return append(first, rest...)
}
