package drill

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

const (
	optionsShown = 4
	coversAsked  = 30
	coverLooks   = 24 // drinks looked at for a round of the size wanted whose answer the trade would give
	sameClass    = 6  // bottles of the class of what is out that are weighed
	samePart     = 16 // and of its kin and its part, those among them
	enoughLikely = 8  // of its kin, beside which no other of its part is offered
	customsDrawn = 2  // that the trade pours in its place
)

// leastMissed is the least of a bottle, in mL, that a drink would miss.
const leastMissed = 10.0

// coverRound takes a bottle out of a classic and offers what may be poured instead: the
// best cover, and others that move the drink further by the size and more, or by as much as
// the stock has. What the trade would answer too comes before what only the glass says.
func (t *Trainer) coverRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	var best *Round
	sure := false // the trade would give the answer of best
	off := func(x *Round) float64 { return math.Abs(math.Log(x.Size / r.Size)) }
	served := t.served(&r)
	for n, i := range rng.Perm(len(served)) {
		if best != nil && (n >= coverLooks || sure && off(best) <= math.Log(nearTimes)) {
			break
		}
		c := &t.classics[served[i]]
		at := coverable(&c.spec, rng)
		if at < 0 {
			continue
		}
		covers, err := t.coversOf(c, at, r.Avoid, rng)
		if err != nil {
			return nil, err
		}
		if chosen := apart(covers, r.Size); len(chosen) == optionsShown {
			round, right := coverOptions(r, c, at, chosen, rng), teaches(&chosen[0])
			if best == nil || right && !sure || right == sure && off(round) < off(best) {
				best, sure = round, right
			}
		}
	}
	if best == nil {
		return nil, flavor.Invalid("stock", len(t.stock), "nothing in this stock covers a proven drink in %d ways; %s", optionsShown, r.Avoid.remedy("keep more bottles"))
	}
	return best, nil
}

// coversOf are the covers of a pour of a classic from a few bottles, and what else of
// them somebody might pour who asks nobody.
func (t *Trainer) coversOf(c *classic, at int, avoid Avoided, rng *rand.Rand) ([]cover.Cover, error) {
	missing := c.spec.Pours[at].Profile
	guest := avoid.guest()
	few := slices.DeleteFunc(t.candidates(missing, rng), func(p *flavor.Profile) bool { return !guest.MayHave(p) })
	found, err := t.finder.Find(context.Background(), cover.Request{Spec: &c.spec, Missing: []*flavor.Profile{missing},
		Candidates: few, Guest: guest, Parts: 1, Limit: coversAsked, Far: true})
	if err != nil {
		return nil, err
	}
	out := alikeIn(found.Covers, c.spec.Pours[at].ML)
	if len(out) == 0 {
		return nil, nil
	}
	least := MinSize + slices.MinFunc(out, nearer).Distance
	for _, p := range few {
		known := slices.ContainsFunc(found.Covers, func(x cover.Cover) bool { return x.Parts[0].Profile == p })
		if known || t.isCustom(missing, p) {
			continue
		}
		x, err := t.inPlace(&c.spec, at, p)
		if err != nil {
			continue // it cannot be measured so
		}
		if x.Distance >= least {
			out = append(out, x)
		}
	}
	return out, nil
}

// inPlace pours an ingredient in place of one pour of a drink, measure for measure, and
// tells how far that moves the glass: what a hand does that asks nobody. Nothing is moved to
// mend it and nothing is judged. It fails if the ingredient cannot be measured or mixed so.
func (t *Trainer) inPlace(s *flavor.Spec, at int, p *flavor.Profile) (cover.Cover, error) {
	old := &s.Pours[at]
	ml, err := measure.ToML(old.Amount, old.Unit, p)
	if err != nil {
		return cover.Cover{}, err
	}
	before, err := t.mixer.Mix(s)
	if err != nil {
		return cover.Cover{}, err
	}
	c := cover.Cover{For: []*flavor.Profile{old.Profile}, Spec: s.Clone()}
	c.Spec.Pours[at].Profile, c.Spec.Pours[at].ML = p, ml
	after, err := t.mixer.Mix(&c.Spec)
	if err != nil {
		return cover.Cover{}, err
	}
	c.Parts = slices.Clone(c.Spec.Pours[at : at+1])
	space := t.finder.Space()
	steps := sense.Between(space.Percept(s, before), space.Percept(&c.Spec, after))
	c.Distance = steps.Total()
	return c, nil
}

func nearer(a, b cover.Cover) int { return cmp.Compare(a.Distance, b.Distance) }

// isCustom reports whether the trade pours one bottle in place of another.
func (t *Trainer) isCustom(missing, p *flavor.Profile) bool {
	return slices.ContainsFunc(t.finder.Customary(missing), func(c flavor.Custom) bool { return slices.Contains(c.Parts, p.ID) })
}

// candidates draws the bottles that the options are made from: what the trade pours in place
// of what is out, some of the same class and kin, which somebody may take for it, and where
// there are few of those, some that do the same in a drink. What is meant without alcohol and
// what is not are never mistaken for each other.
func (t *Trainer) candidates(missing *flavor.Profile, rng *rand.Rand) []*flavor.Profile {
	drawn := t.customary(missing)
	var class, kin, part []*flavor.Profile
	for _, i := range rng.Perm(len(t.stock)) {
		switch p := t.stock[i]; {
		case p == missing || slices.Contains(drawn, p) || sober(p) != sober(missing):
		case p.Class == missing.Class && len(class) < sameClass:
			class = append(class, p)
		case p.Class != missing.Class && p.Class.Kin() == missing.Class.Kin():
			kin = append(kin, p)
		case p.Class != missing.Class && p.Class.Part() == missing.Class.Part():
			part = append(part, p)
		}
	}
	drawn = append(drawn, class...)
	drawn = append(drawn, kin[:min(len(kin), max(0, samePart-len(drawn)))]...)
	return append(drawn, part[:min(len(part), max(0, enoughLikely-len(drawn)))]...)
}

// sober reports whether a bottle stands for one with alcohol and has none to speak of, in
// % vol.
func sober(p *flavor.Profile) bool {
	const hardlyAny = 1.2
	part := p.Class.Part()
	return (part == flavor.PartBase || part == flavor.PartModifier) && p.ABV.Value <= hardlyAny
}

// customary lists what of the stock the trade pours alone in place of a bottle, the first
// choices first.
func (t *Trainer) customary(missing *flavor.Profile) (out []*flavor.Profile) {
	for _, c := range t.finder.Customary(missing) {
		at := slices.IndexFunc(t.stock, func(p *flavor.Profile) bool { return len(c.Parts) == 1 && p.ID == c.Parts[0] })
		if at >= 0 && len(out) < customsDrawn {
			out = append(out, t.stock[at])
		}
	}
	return out
}

// coverable picks a pour that a bar may run out of, −1 if there is none. Plain syrup takes
// no aroma with it, so that nothing can be asked of it.
func coverable(s *flavor.Spec, rng *rand.Rand) int {
	var may []int
	for i := range s.Pours {
		p := s.Pours[i].Profile
		part := p.Class.Part()
		asked := part == flavor.PartBase || part == flavor.PartModifier || part == flavor.PartSweetener && slip.Smells(p)
		if asked && s.Pours[i].ML >= leastMissed && !p.Class.Solid() {
			may = append(may, i)
		}
	}
	if len(may) == 0 {
		return -1
	}
	return may[rng.IntN(len(may))]
}

// alikeIn keeps the covers that pour about as much as what is out: a barspoon
// in place of two ounces would give itself away.
func alikeIn(covers []cover.Cover, ml float64) []cover.Cover {
	return slices.DeleteFunc(slices.Clone(covers), func(c cover.Cover) bool {
		return c.Parts[0].ML < 0.4*ml || c.Parts[0].ML > 2.5*ml
	})
}

// apart returns the nearest cover and the next ones that lie at least a size
// further out, or else the furthest there are; nil if the nearest does not keep the drink.
// What the trade pours by custom is nobody's wrong one.
func apart(covers []cover.Cover, size float64) []cover.Cover {
	by := slices.Clone(covers)
	slices.SortStableFunc(by, nearer)
	if len(by) == 0 || !by[0].Keeps {
		return nil
	}
	by = append(by[:1], slices.DeleteFunc(by[1:], func(c cover.Cover) bool { return c.Custom })...)
	if len(by) < optionsShown {
		return nil
	}
	from, last := 1, len(by)-optionsShown+1
	for from < last && by[from].Distance < by[0].Distance+size {
		from++
	}
	return append(by[:1:1], by[from:from+optionsShown-1]...)
}

// teaches reports whether a bartender would call a cover that keeps the drink right: it
// loses nothing that led what is out, and it is a spirit of the same class or the trade
// pours it: one liqueur is not much like another. Common practice, no source.
func teaches(c *cover.Cover) bool {
	part, out := c.Parts[0].Profile, c.For[0]
	spirits := out.Base() && part.Class == out.Class
	return len(c.Gone) == 0 && (c.Custom || spirits)
}

func coverOptions(r RoundRequest, c *classic, at int, covers []cover.Cover, rng *rand.Rand) *Round {
	missing := c.spec.Pours[at].Profile
	round := &Round{Request: r, Size: covers[1].Distance - covers[0].Distance, Specs: []flavor.Spec{c.spec},
		Question: wording.ToCover(missing.Name, c.spec.Name),
		key:      key{classic: c, pour: at, lost: covers[0].Lost, values: []float64{covers[0].Distance, covers[1].Distance}}}
	for place, i := range rng.Perm(len(covers)) {
		x := &covers[i]
		round.Options = append(round.Options, Option{Label: wording.Pours(x.Parts), Pours: x.Parts})
		if i == 0 {
			round.key.option = place
		}
		if x.Distance < covers[0].Distance+MinSize {
			round.key.alike = append(round.key.alike, alike{place, x.Lost})
		}
	}
	round.key.after = ratio.EquivalentsOf(&covers[0].Spec)
	return round
}

// alike is an option that lies too near to the best for anybody to tell which is
// nearer: less than MinSize further, so that it is right as well.
type alike struct {
	option int
	lost   []flavor.AromaFamily
}

// forBottle is the share of the points that the bottle alone brings; what it loses brings the
// others. Behind the bar it is the bottle that is right or wrong.
const forBottle = 0.6

// gradeCover takes the bottle for right or wrong, whatever is ticked as lost.
func gradeCover(r *Round, a *Answer) (*Grade, error) {
	if err := checkOption(r, a); err != nil {
		return nil, err
	}
	k := &r.key
	kept, wanted := false, k.lost
	for _, x := range k.alike {
		if x.option == a.Option {
			kept, wanted = true, x.lost
		}
	}
	named := shared(a.Lost, wanted)
	g := &Grade{Before: ratio.EquivalentsOf(&k.classic.spec), After: k.after, Solution: r.Options[k.option].Label}
	if kept {
		g.Right, g.Points = true, forBottle+(1-forBottle)*named
	} else if len(a.Lost) > 0 {
		g.Points = (1 - forBottle) * named // who ticked nothing named nothing
	}
	for _, x := range k.alike {
		if x.option != k.option {
			g.Solution += wording.OrAsNear(r.Options[x.option].Label)
		}
	}
	g.Text = wording.Covered(r.Options[k.option].Label, k.classic.spec.Pours[k.pour].Profile.Name, k.values[0], k.values[1], k.lost, leavesOf(&g.Before, &g.After))
	return g, nil
}

// leavesOf tells what a drink has plainly more of once it is covered, above 0, and less of,
// below it, as a share of all that is in it.
func leavesOf(before, after *ratio.Equivalents) (out [ratio.NumAxes]int) {
	was, is := shareOf(*before), shareOf(*after)
	for _, a := range ratio.Axes() {
		if was[a] < shareFloor || is[a] < shareFloor || tasting.JND(a, was[a], is[a]) < plainlyTasted {
			continue
		}
		out[a] = cmp.Compare(is[a], was[a])
	}
	return out
}

func checkOption(r *Round, a *Answer) error {
	if a.Option < 0 || a.Option >= len(r.Options) {
		return flavor.Invalid("option", a.Option, "there is no option %d; use 0 to %d", a.Option, len(r.Options)-1)
	}
	return nil
}

// shared is the share of two lists that is in both (Jaccard), 1 for two empty
// ones.
func shared(a, b []flavor.AromaFamily) float64 {
	all, both := map[flavor.AromaFamily]bool{}, 0
	for _, f := range a {
		all[f] = true
	}
	for _, f := range b {
		if all[f] {
			both++
		}
		all[f] = true
	}
	if len(all) == 0 {
		return 1
	}
	return float64(both) / float64(len(all))
}
