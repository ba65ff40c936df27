// Package shelf is what may be poured in a gap: each bottle in which amounts, what it must earn
// there, and which bottles are like what went.
package shelf

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/practice"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/mix"
)

// Shelf is the bottles that may be poured in a gap. Fillings name them by their places.
type Shelf struct {
	Req       *asked.Request
	Gap       *gap.Gap
	MostParts int // substitutes in one cover
	Cands     []Candidate
	Entries   []search.Part // the same, as the search sees them
	Practice  practice.Practice

	weights asked.Weights
	trade   *gap.Trade
	mixer   *mix.Mixer
	desk    *desk // of the candidates and entries
	desks   *Desks
}

// New returns a shelf with nothing on it yet. It lists on one of some desks.
func New(r *asked.Request, g *gap.Gap, trade *gap.Trade, w asked.Weights, mixer *mix.Mixer, desks *Desks) *Shelf {
	return &Shelf{Req: r, weights: w, Gap: g, MostParts: min(asked.MaxParts, cmp.Or(r.Parts, asked.UsualParts)+len(g.Gone)-1),
		trade: trade, mixer: mixer, desks: desks}
}

// Candidate is one ingredient that may be a part.
type Candidate struct {
	*role.Bottle
	Amounts []portion.Amount
}

// AddCandidates lists what may be poured, in the order of the ids, and what each
// must earn.
func (s *Shelf) AddCandidates() error {
	grid, customs := s.Gap.Grid(), s.Gap.Customs()
	s.desk = s.desks.borrow(len(s.Req.Candidates))
	s.Cands, s.Entries = s.desk.cands, s.desk.entries
	s.Practice = practice.New(len(s.Gap.Gone))
	for _, p := range byID(s.Req.Candidates) {
		if s.Gap.InDrink(p) || !s.Gap.Accepts(p) {
			continue
		}
		b := s.trade.Cellar.Of(p)
		amounts, err := s.inLightMeasure(p, s.Gap.InMeasure(p, s.Gap.AtMost(b, grid.Of(p))))
		if err != nil {
			return err
		}
		if len(amounts) == 0 || !s.Gap.Admits(b, customs.Names(p.ID)) {
			continue
		}
		part := search.Part{Per: s.Gap.RowOf(&b.Holds), Odd: role.Odd(p.Class)}
		if s.Req.Common != nil {
			part.Price = s.weights.Rare * s.Req.Common.Rarity(p.ID) * s.Gap.Otherwise(b)
		}
		if s.Gap.Stretches(b) {
			part.Price += s.weights.Part
		}
		part.Amounts, part.Strange = s.desk.list(len(amounts)), s.desk.list(len(s.Gap.Gone))
		for i, a := range amounts {
			part.Amounts[i] = a.ML
		}
		part.Alike, part.Firm = s.Gap.Alike(p, amounts)
		for m := range s.Gap.Gone {
			part.Strange[m] = s.Gap.Strange(b, m, customs.Place(m, p.ID))
		}
		s.Cands = append(s.Cands, Candidate{b, amounts})
		s.Practice.Add(p, s.Gap, customs)
		s.Entries = append(s.Entries, part)
	}
	s.addKnown(customs)
	return nil
}

// inLightMeasure leaves of the amounts of a bottle those that a bartender pours of it in place
// of a spirit for a guest who wants less alcohol, see [gap.Gap.LightMeasure]: of a wine that is
// too strong in full measure as much as the guest may have, and of a spirit none. Beside other
// things that are out how strong the drink will be is not known yet, and half a measure may do for a guest who drinks some.
func (s *Shelf) inLightMeasure(p *flavor.Profile, amounts []portion.Amount) ([]portion.Amount, error) {
	const rounding, alone = 1e-6, 1
	least, most := s.Gap.LightMeasure(p)
	if most == 0 {
		return amounts, nil
	}
	if len(s.Gap.Gone) > alone && !s.Gap.NoAlcohol() {
		least /= 2
	}
	notMore := slices.DeleteFunc(slices.Clone(amounts), func(a portion.Amount) bool { return a.ML > most+rounding })
	full := slices.DeleteFunc(slices.Clone(notMore), func(a portion.Amount) bool { return a.ML < least-rounding })
	if len(s.Gap.Gone) > alone {
		return full, nil
	}
	drink := s.Req.Spec.Clone()
	for i := len(notMore) - 1; i >= 0; i-- {
		drink.Pours = append(s.kept(), notMore[i].Of(p))
		mixed, err := s.mixer.Mix(&drink)
		switch {
		case err != nil:
			return nil, err
		case s.Req.Guest.TooStrong(mixed.ABV):
		case notMore[i].ML >= least-rounding:
			return full[:i+1-(len(notMore)-len(full))], nil
		case p.Class.Kin() == flavor.KinSpirit:
			return nil, nil
		default:
			return notMore[i : i+1], nil
		}
	}
	return nil, nil
}

// kept returns the pours of the drink that stay.
func (s *Shelf) kept() []flavor.Pour {
	out := make([]flavor.Pour, 0, len(s.Gap.Keep)+1)
	for _, i := range s.Gap.Keep {
		out = append(out, s.Req.Spec.Pours[i])
	}
	return out
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}
