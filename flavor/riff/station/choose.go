package station

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/weigh"
)

// The weights of the choice. Quality and sameness both run from 0 to 1.
const (
	relevance    = 0.6 // of quality against sameness: the λ of maximal marginal relevance
	likeWeight   = 0.5 // of the likeness to proven drinks, in quality
	moveCost     = 0.14
	oddCost      = 0.30 // of each unit of strangeness, see companions
	reachJND     = 8.0  // the distance at which two drinks are no longer much alike
	mostOdd      = 3.0
	farCost      = 0.020 // of a just-noticeable difference from the drink, where a wish says what to change or it cannot be poured
	farUnasked   = 2.0   // times as much of what is beyond reachJND, where nobody says what to change: it is another drink
	metWeight    = 0.3   // of how well the wishes for more or less are met
	carryWeight  = 0.50  // of how much of that is by what a bartender reaches for first
	nearWeight   = 0.25  // of what comes nearest to a drink that cannot be poured
	customWeight = 0.30  // of what the trade pours in place of what may not be poured
	plainWeight  = 0.30  // of what meets a wish by amounts alone
	unsettling   = 0.25  // of a just-noticeable difference that it must earn for a guest who avoids an allergen
	idleCost     = 0.20  // of each thing that came in and serves no wish
	strayCost    = 0.30  // of another spirit than that of the drink, where a wish says what to change and is not met by it
	softSits     = 0.20  // of how well it sits in its family, at most that counts of a soft drink
	shedCost     = 0.40  // of what goes although a wish for more is met with it, as the ginger beer of a spicier drink
	swerveCost   = 0.30  // of another glass or another way of mixing that nothing asks for
	dropCost     = 0.15  // of leaving out what is there, where no wish says what there should be less of
	burdenCost   = 0.15  // of each allergen that came in beside what is wished
	repeatCost   = 0.10  // of each time that something new is in the list already
	kindWeight   = 0.20
	kindCost     = 0.03 // of each time from the third that a move is in the list already
	strange      = 0.45 // strangeness from which a riff that nobody wished for comes after the others
	strangeCost  = 0.30
	newWeight    = 0.35 // of what both bring in that the drink had not
)

// quality is how good a riff is by itself: how well it sits in its family, how
// much it reads like a drink that people make, how few moves it takes, how
// usual the company is that its pours keep, how well it meets the
// wishes, and how much of the drink it leaves as it was where there are some.
func quality(s *Settled) float64 {
	near := 0.0
	if s.nearest {
		near = nearWeight
	}
	if s.plain {
		near += plainWeight
	}
	if s.strays {
		near -= strayCost
	}
	if s.sheds {
		near -= shedCost
	}
	if s.swerves {
		near -= swerveCost
	}
	if s.drops {
		near -= dropCost
	}
	sits := (min(s.Score, 100) - weigh.BalancedFrom) / (100 - weigh.BalancedFrom)
	if s.soft {
		sits = min(sits, softSits) // a score holds a soft drink against drinks with alcohol
	}
	return (1-likeWeight)*sits + likeWeight*min(1, max(0, s.Rank)) - moveCost*float64(s.Moves-1) - oddCost*min(s.odd, mostOdd) + metWeight*s.met + carryWeight*s.carried + customWeight*s.custom - farCost*s.far - idleCost*float64(s.idle) - burdenCost*float64(s.burdens) - unsettling*s.unsettles + near
}

// sameness is how much of one riff the other repeats: near in the glass, made by
// the same move, or with the same new things.
func (j *Job) sameness(a, b *Settled) float64 {
	s := (1 - kindWeight - newWeight) * math.Exp(-Apart(a.Glass, b.Glass)/reachJND)
	if a.Kind == b.Kind {
		s += kindWeight
	}
	return s + newWeight*j.shared(a, b)
}

// shared is the share of what two riffs bring in that both do, 0 to 1.
func (j *Job) shared(a, b *Settled) float64 {
	if j.From == nil {
		return 0
	}
	var both, all float64
	for i := range a.Spec.Pours {
		p := a.Spec.Pours[i].Profile
		if j.From.HasProfile(p) {
			continue
		}
		all++
		if b.Spec.HasProfile(p) {
			if j.asked(p) {
				return 1 // of two that meet a wish with the same bottle the second says little
			}
			both++
		}
	}
	for i := range b.Spec.Pours {
		if p := b.Spec.Pours[i].Profile; !j.From.HasProfile(p) && !a.Spec.HasProfile(p) {
			all++
		}
	}
	if all == 0 {
		return 0
	}
	return both / all
}

// enoughCarried is the number of riffs that meet a wish as a bartender would from which
// those that meet it otherwise are left out.
const enoughCarried = 3

// mostlyCarried is the share of what grew that comes from what a bartender reaches for.
const mostlyCarried = 0.5

// AsAsked reports whether a riff meets the wishes mostly by what a bartender reaches for
// first; true if no table says what that is.
func (s *Settled) AsAsked() bool { return s.carried >= mostlyCarried }

// asAsked leaves out the riffs that meet a wish by something else than what a bartender
// reaches for first, if there are enough that do.
func (j *Job) asAsked(pool []*Settled) []*Settled {
	carried := slices.DeleteFunc(slices.Clone(pool), func(s *Settled) bool { return !s.AsAsked() })
	if j.From == nil || len(carried) < enoughCarried {
		return pool
	}
	return carried
}

// Whole reports whether a riff meets the wishes for more or less against the drink asked
// about; else it does only against what of that can be poured.
func (s *Settled) Whole() bool { return s.whole }

// ofWhole leaves out the riffs that meet a wish only against what of the drink can be
// poured, if there are enough that meet it against the whole.
func ofWhole(pool []*Settled) []*Settled {
	whole := slices.DeleteFunc(slices.Clone(pool), func(s *Settled) bool { return !s.whole })
	if len(whole) < enoughCarried {
		return pool
	}
	return whole
}

// Choose picks up to limit riffs by maximal marginal relevance. No two are nearer to each other
// than [Job.LeastApart]. A riff stands back if it brings in an ingredient that another of the
// list brings in, and is left out if mostTimes of them do: each riff is an idea of its own, and
// the list is not one idea on every base.
func (j *Job) Choose(pool []*Settled, limit int) []*Settled {
	times := map[string]int{} // that an ingredient came in
	kinds := map[Kind]int{}   // that a move was made
	most := max(mostTimes, int(math.Ceil(mostTimesOf*float64(limit))))
	return j.Pick(j.asAsked(ofWhole(pool)), limit, func(s *Settled) (cost float64) {
		cost = -kindCost * float64(max(0, kinds[s.Kind]-2))
		if s.odd >= strange && !j.Limits.Wished() && !j.Limits.Lighter() {
			cost -= strangeCost
		}
		for _, p := range j.came(s) {
			if times[p.ID] >= most && !j.Limits.Wants(p) && !j.stepsIn(p) {
				return math.Inf(-1)
			}
			cost -= repeatCost * float64(times[p.ID])
		}
		return cost
	}, func(s *Settled) {
		kinds[s.Kind]++
		for _, p := range j.came(s) {
			times[p.ID]++
		}
	})
}

// How often one thing comes in anew in a list, and as a share of a long one.
const (
	mostTimes   = 3
	mostTimesOf = 0.3
)

// came lists what a riff pours that the drink asked about does not.
func (j *Job) came(s *Settled) (out []*flavor.Profile) {
	for i := range s.Spec.Pours {
		if p := s.Spec.Pours[i].Profile; j.From != nil && !j.From.HasProfile(p) {
			out = append(out, p)
		}
	}
	return out
}

// Pick is Choose with a bonus that each riff has at its turn; picked is told
// what was chosen.
func (j *Job) Pick(pool []*Settled, limit int, bonus func(*Settled) float64, picked func(*Settled)) []*Settled {
	slices.SortStableFunc(pool, func(a, b *Settled) int {
		return cmp.Or(cmp.Compare(quality(b), quality(a)), strings.Compare(KeyOf(&a.Spec), KeyOf(&b.Spec)))
	})
	same := make([]float64, len(pool)) // greatest sameness with what is chosen
	worth := make([]float64, len(pool))
	for i, s := range pool {
		worth[i] = quality(s)
	}
	gone := make([]bool, len(pool))
	var out []*Settled
	for len(out) < limit {
		at, top := -1, math.Inf(-1)
		for i, s := range pool {
			if gone[i] {
				continue
			}
			if v := relevance*worth[i] - (1-relevance)*same[i] + bonus(s); v > top+tiny {
				at, top = i, v
			}
		}
		if at < 0 {
			break
		}
		gone[at] = true
		out = append(out, pool[at])
		picked(pool[at])
		j.compare(pool, pool[at], gone, same)
	}
	return out
}

// compare strikes out what is too near to a pick or made of the same things, and notes how much the others
// repeat it.
func (j *Job) compare(pool []*Settled, pick *Settled, gone []bool, same []float64) {
	for i, s := range pool {
		if gone[i] {
			continue
		}
		if Apart(s.Glass, pick.Glass) < j.LeastApart() || MadeOf(&s.Spec) == MadeOf(&pick.Spec) {
			gone[i] = true
			j.Left.TooAlike++
			continue
		}
		same[i] = max(same[i], j.sameness(s, pick))
	}
}
