package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/precedent"
)

// How strange a drink may be, in the strangeness of pairs, see [precedent.Pair.Odd].
const (
	unproven   = 0.8 // of an ingredient that no proven drink pours
	tooOdd     = 1.5 // of a whole drink
	tooOddMust = 2.0 // of one that moves what has to go, or pours what a wish asks for
)

// company sums what is odd in a drink: in the pairs that it keeps, and in what no proven
// drink pours. It takes off what goes together well, on the mean. Pairs of given drinks
// do not count, nor those of the proven drink that it stands on. It says whether proven
// drinks shun one of the pairs, or the whole is too odd.
func (j *Job) company(s, frame *flavor.Spec) (odd float64, shunned bool) {
	var well, pairs float64
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if j.novel(p) {
			odd += unproven
		}
		odd += j.oddInHot(s, frame, p)
		for k := range i {
			x, counts := j.between(s, frame, &s.Pours[i], &s.Pours[k])
			shunned = shunned || x.shunned
			if counts {
				odd, well, pairs = odd+x.odd, well+x.well, pairs+1
			}
		}
	}
	most := tooOdd
	if len(j.Must) > 0 || s.Has(j.asked) {
		most = tooOddMust
	}
	return odd - well/max(1, pairs), shunned || odd > most
}

// oddInHot is how strange an ingredient is in a drink that is served hot, 0 in any other, and
// of what a drink that was given pours, or the proven one that this stands on.
func (j *Job) oddInHot(s, frame *flavor.Spec, p *flavor.Profile) float64 {
	if s.Service != flavor.Hot || frame != nil && frame.HasProfile(p) || slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return g.HasProfile(p) }) {
		return 0
	}
	hot := j.Station.companions.InHot(j.keptOf(p))
	return max(0, hot.Odd())
}

// pairing is what proven drinks say of two pours of one drink: how strange they are together,
// or how well they go, and whether nobody pours them so.
type pairing struct {
	odd, well float64
	shunned   bool
}

// between is what is said of two pours, and whether that counts as a pair.
func (j *Job) between(s, frame *flavor.Spec, x, y *flavor.Pour) (out pairing, counts bool) {
	a, b := x.Profile, y.Profile
	if j.unquestioned(s, frame, a, b) {
		return out, false
	}
	out.shunned = clash(x, y)
	if j.soft(a) && j.soft(b) {
		return out, false
	}
	p := j.pairOf(a, b)
	v := p.Odd()
	if v > 0 && (thins(a, b) || thins(b, a)) {
		return pairing{}, false
	}
	asked := j.asked(a) || j.asked(b) || j.comesTogether(a, b)
	out.shunned = out.shunned || sauced(a, b) || sauced(b, a) || p.Shunned() && (!asked || a.Class.Curdles() || b.Class.Curdles())
	switch {
	case v > 0 && (asked || j.rareMust(a) || j.rareMust(b)):
		out.odd = oddAsked * v
	case v > 0:
		out.odd = v
	default:
		out.well = -v
	}
	return out, true
}

// unquestioned reports whether nothing is said of two ingredients: they are one, one is there
// for its foam, they were given together or stand in for what was, or the proven drink that
// this stands on pours both.
func (j *Job) unquestioned(s, frame *flavor.Spec, a, b *flavor.Profile) bool {
	if a.Is(b) || j.foams(s, a) || j.foams(s, b) || j.givenBoth(a, b) || j.standsIn(a, b) {
		return true
	}
	return frame != nil && frame.HasProfile(a) && frame.HasProfile(b)
}

// thins reports whether one of two is water or plain soda and the other is what they
// lengthen in any drink: what smells of nothing keeps the company of every spirit, juice
// and syrup. Common practice, no source.
func thins(plain, p *flavor.Profile) bool {
	water := (plain.Class.Free() || plain.Class.Soft()) && plain.Sugar.Value <= 0 && plain.Bitter.Value <= 0 && plain.Aroma.Total() <= 0
	if !water || p.Carbonated || p.Class.Curdles() {
		return false
	}
	switch p.Class.Part() {
	case flavor.PartBase, flavor.PartModifier, flavor.PartSour, flavor.PartSweetener:
		return p.Class.Kin() != flavor.KinSavoury
	}
	return false
}

// givenBoth reports whether a drink that was given pours two ingredients.
func (j *Job) givenBoth(a, b *flavor.Profile) bool {
	return slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return g.HasProfile(a) && g.HasProfile(b) })
}

// comesTogether reports whether two ingredients are each of a drink that was given, of two
// that are to meet.
func (j *Job) comesTogether(a, b *flavor.Profile) bool {
	given := func(p *flavor.Profile) bool {
		return slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return g.HasProfile(p) })
	}
	return len(j.Given) > 1 && given(a) && given(b)
}

// What is uneasy in a drink between two that are to meet, in the strangeness of pairs.
const (
	uneasyShunned = 1.5  // a pair that proven drinks shun: one gives way to the other
	uneasyNever   = 40.0 // a sauce in a sweet soda, or what curdles beside what proven drinks keep from it
)

// Uneasy is how strange the company is that the pours of a drink keep between two that
// are to meet, 0 for none: of one of either, two bases aside, of which one gives way to
// the other.
func (j *Job) Uneasy(s *flavor.Spec) (odd float64) {
	for i := range s.Pours {
		for k := range i {
			a, b := s.Pours[i].Profile, s.Pours[k].Profile
			if a.ID == b.ID || a.Base() && b.Base() || j.givenBoth(a, b) {
				continue
			}
			pair := j.pairOf(a, b)
			switch {
			case sauced(a, b), sauced(b, a), pair.Shunned() && (a.Class.Curdles() || b.Class.Curdles()):
				odd += uneasyNever
			case pair.Shunned():
				odd += uneasyShunned
			default:
				odd += min(uneasyShunned, max(0, pair.Odd()))
			}
		}
	}
	return odd
}

// sauced reports whether one of two is a sauce and the other a sweet soda. Common practice,
// no source.
func sauced(sauce, soda *flavor.Profile) bool {
	return sauce.Class.Kin() == flavor.KinSavoury && soda.Carbonated && soda.Sugar.Value >= sweetSoda
}

// A pour is savoury from so many g/L of salt or of glutamate, and so many mL. A drink clashes with
// it from so many g/L of sugar, a syrup by how strongly it smells. Common practice, no source.
const (
	savourySalt  = 2.5
	savouryUmami = 1.0
	savouryML    = 10.0
	sweetBeside  = 100.0
	sweetSoda    = 50.0
	plainSyrup   = 3.0
)

// clash reports whether one of two pours is savoury and the other a sweet liqueur, juice or
// soda, a syrup of something, cider or sparkling wine: nobody pours tomato and orange
// liqueur together. A dash of hot sauce is no broth.
func clash(a, b *flavor.Pour) bool {
	sweet := func(p *flavor.Pour) bool {
		switch p.Profile.Class.Kin() {
		case flavor.KinLiqueur, flavor.KinCream, flavor.KinJuice:
			return p.Profile.Sugar.Value >= sweetBeside
		case flavor.KinSweetener:
			return p.Profile.Aroma.Total() >= plainSyrup
		case flavor.KinSparkling:
			return p.Profile.Sugar.Value >= sweetSoda || p.Profile.Class.Vinous()
		}
		return false
	}
	return Savoury(a) && sweet(b) || Savoury(b) && sweet(a)
}

// Savoury reports whether a pour makes a drink taste of the kitchen.
func Savoury(p *flavor.Pour) bool {
	return p.ML >= savouryML && p.Profile.Class.Part() != flavor.PartTexture && (p.Profile.Salt.Value >= savourySalt || p.Profile.Senses.UmamiGPerL >= savouryUmami)
}

// turnsSavoury reports whether a riff pours something savoury where the drink asked about has
// nothing of the kind and no wish leads there, or none of it where that is savoury and could be
// poured: tomato lengthens no daisy, and without tomato nothing is a tomato drink. What the proven
// drink pours that it stands on is poured so.
func (j *Job) turnsSavoury(s, frame *flavor.Spec) bool {
	if j.From == nil {
		return false
	}
	was := func(p flavor.Pour) bool { return Savoury(&p) }
	if slices.ContainsFunc(j.From.Pours, was) {
		return j.hasAll(&flavor.Spec{Pours: slices.DeleteFunc(slices.Clone(j.From.Pours), func(p flavor.Pour) bool { return !was(p) })}) && !slices.ContainsFunc(s.Pours, was)
	}
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		asked := j.asked(p.Profile) || len(j.Limits.Aims) > 0 && j.Serves(p.Profile)
		return was(p) && !asked && !(frame != nil && frame.HasProfile(p.Profile))
	})
}

// oddAsked is how much of what is strange in a pair counts where a wish asks for one of
// the two: proven drinks say little of what they seldom pour, and somebody wants it.
const oddAsked = 0.35

// rareMust reports whether a bottle must move that proven drinks hardly pour: what they
// pour it with says little.
func (j *Job) rareMust(p *flavor.Profile) bool {
	return j.Must[p.ID] && j.Station.practice != nil && j.Station.practice.Count(p.ID) < rarely
}

// rarely is the number of proven pours below which an ingredient is rare.
const rarely = 3

// asked reports whether a wish asks for an ingredient, or is met with it before others.
func (j *Job) asked(p *flavor.Profile) bool {
	return j.Limits != nil && (j.Limits.Wants(p) || slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.CarriesFirst(p) }))
}

// Odd is how strange the company is that the pours of a drink keep, most of what any
// drink is if proven drinks shun it.
func (j *Job) Odd(s *flavor.Spec) float64 {
	odd, shunned := j.company(s, nil)
	if shunned {
		return max(odd, mostOdd)
	}
	return odd
}

// Odd is how strange the company is that the pours of a settled drink keep, those of the
// proven one that it stands on aside; below 0 if they go together well.
func (s *Settled) Odd() float64 { return s.odd }

// Shuns reports whether proven drinks shun the company of a draft, and counts it if
// they do: no amounts mend that, so there is no need to settle them.
func (j *Job) Shuns(d *Sketch) bool {
	_, shunned := j.company(&d.Spec, d.Frame)
	if shunned {
		j.Left.Unfit++
	}
	return shunned
}

// soft reports whether an ingredient is for a guest who takes no alcohol and stands for a
// spirit, lengthens or sours: few proven drinks go without, so what those leave out says little of it.
func (j *Job) soft(p *flavor.Profile) bool {
	if j.Limits == nil || !j.Limits.Guest.NoAlcohol {
		return false
	}
	part := p.Class.Part()
	return part == flavor.PartBase || part == flavor.PartLength && p.Class.Kin() != flavor.KinTea || part == flavor.PartSour || part == flavor.PartSweetener
}

// novel reports whether no proven drink pours an ingredient that nobody asked for.
func (j *Job) novel(p *flavor.Profile) bool {
	if j.Station.practice == nil || j.Station.practice.Count(p.ID) > 0 || j.Must[p.ID] {
		return false
	}
	return !j.stepsIn(p) && (j.Limits == nil || !j.Limits.Wants(p)) && !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return g.HasProfile(p) })
}

// pairOf is what proven drinks say of two ingredients, worked out once for a job.
func (j *Job) pairOf(a, b *flavor.Profile) *precedent.Pair {
	key := [2]string{min(a.ID, b.ID), max(a.ID, b.ID)}
	if p, ok := j.pairs[key]; ok {
		return p
	}
	p := j.Station.companions.PairOf(a, b, j.keptOf(a), j.keptOf(b))
	j.pairs[key] = &p
	return &p
}

func (j *Job) keptOf(p *flavor.Profile) *precedent.Kept {
	if k, ok := j.keeps[p.ID]; ok {
		return k
	}
	k := j.Station.companions.Keeping(p)
	j.keeps[p.ID] = k
	return k
}

// foams reports whether an ingredient gives texture and keeps any company. What steps in
// for another texture that may not be poured goes with all that the other went with. The
// white of an egg, or what foams like it, goes with whatever is sour.
func (j *Job) foams(s *flavor.Spec, p *flavor.Profile) bool {
	if p.Class.Part() != flavor.PartTexture {
		return false
	}
	return j.stepsIn(p) || p.Whitens() && s.HasPart(flavor.PartSour)
}

// stepsIn reports whether an ingredient steps in for a pour of the drink asked about
// that may not be poured.
func (j *Job) stepsIn(p *flavor.Profile) bool {
	return j.From != nil && slices.ContainsFunc(j.From.Pours, func(x flavor.Pour) bool {
		_, ok := j.Has(x.Profile)
		return !ok && x.Profile.Class.Kin() == p.Class.Kin()
	})
}

// Alike is how much one ingredient is in kind, smell and look what another is, 0 to
// 1: zero for what is of another class.
func (j *Job) Alike(p, q *flavor.Profile) float64 {
	if p.Class != q.Class {
		return 0
	}
	return j.Station.companions.Likeness(p, q)
}
