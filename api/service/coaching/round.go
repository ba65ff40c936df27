package coaching

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"time"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

// RoundWish asks for a round of training.
type RoundWish struct {
	Kind    drill.Kind // empty for what the learner needs most
	Axis    ratio.Axis // if HasAxis
	HasAxis bool       // else one is picked
	Not     drill.Kind // the kind that came last, and is not asked again at once; only where Kind is empty
	Size    float64    // in just-noticeable steps; 0 for what the learner's results ask for
}

// RoundRequest asks for a round for a learner, of whom nothing may be known.
type RoundRequest struct {
	Learner drill.Learner
	Wish    RoundWish
	At      time.Time  // by which skills are due
	Rand    *rand.Rand // chooses among what would do equally well
}

// Round lets a trainer make a round. Where the wish leaves the axis open it tries one after
// the other, since not every one can be spoilt in the size asked for.
func Round(t *drill.Trainer, r RoundRequest) (*drill.Round, error) {
	kind := r.Wish.Kind
	if kind == "" {
		kind = r.Learner.NextBut(r.Wish.Not, r.At, 0).Kind
	}
	skills := skillsToTry(r.Learner, kind, r.At, r.Rand)
	if r.Wish.HasAxis {
		skills = slices.DeleteFunc(skills, func(k drill.Skill) bool { return k.Axis != r.Wish.Axis.String() })
	}
	err := fmt.Errorf("no skill of kind %q", kind)
	for _, k := range skills {
		axis, _ := ratio.ParseAxis(k.Axis)
		ask := drill.RoundRequest{Kind: kind, Axis: axis, Size: r.Wish.Size, Seed: r.Rand.Uint64()}
		if ask.Size == 0 {
			ask.Size = k.Stairs.Next()
		}
		var round *drill.Round
		if round, err = t.Round(ask); err == nil {
			return round, nil
		}
		if fault := (*flavor.Fault)(nil); !errors.As(err, &fault) {
			return nil, err
		}
	}
	return nil, err
}

// skillsToTry lists the skills of a kind: in any order, so that no round gives
// its axis away, but those that are due or new before the rest.
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
