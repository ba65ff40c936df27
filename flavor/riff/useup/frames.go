package useup

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/template"
)

// How many frames are tried for each bottle, and for two together.
const (
	framesEach     = 40
	framesTogether = 24
)

// tradeOwn is how much a bottle counts as like what it takes the place of, where that is
// what the trade does with it.
const tradeOwn = 0.5

// uses returns the mL of p in a drink, zero if it is too little to move it.
func (u *user) uses(s *flavor.Spec, p *flavor.Profile) float64 {
	ml := s.MLOf(p.Is)
	if ml < u.work.LeastUse(p) {
		return 0
	}
	return ml
}

// frame is a proven drink with a bottle put in.
type frame struct {
	spec   flavor.Spec
	family string
	drink  *flavor.Spec // the proven drink
	likely float64
	own    float64 // how much what the bottle took the place of is like it, 0 to 1
}

// familyOf is the family of a frame: its proven drink's, or that of what is left of it
// for a guest who takes no alcohol.
func (u *user) familyOf(s *flavor.Spec, p *template.Labelled) string {
	dry := func(s *flavor.Spec) bool { return !s.HasPart(flavor.PartBase) }
	switch {
	case !u.work.Limits.Guest.NoAlcohol || dry(s) == dry(&p.Spec):
		return p.Family
	case s.HasPart(flavor.PartLength):
		return "lemonade"
	}
	return "light-sour"
}

// rank is the order in which frames are tried: a bottle goes first where proven
// drinks pour it, or what smells like it.
func (f *frame) rank() float64 { return (1-ownWeight)*f.likely + ownWeight*f.own }

const ownWeight = 0.5

// frames puts a bottle into every proven drink that has a place for it, and
// keeps those that rank highest, the families in turn.
func (u *user) frames(it *station.Item) []frame {
	var all []frame
	for p := range u.poured() {
		for at := range p.Spec.Pours {
			if put, own, ok := u.put(&p.Spec, at, it); ok {
				all = u.framed(all, p, put, own)
			}
		}
		if put, ok := u.beside(&p.Spec, it); ok && u.work.Accent(it.Profile) {
			all = u.framed(all, p, put, tradeOwn)
		}
	}
	return inTurn(all, framesEach)
}

// together puts two bottles into every proven drink that has places for both, or one
// for the first beside which the second seasons, and keeps those that rank highest.
func (u *user) together(first, second *station.Item) []frame {
	var all []frame
	for p := range u.poured() {
		for at := range p.Spec.Pours {
			with, own, ok := u.put(&p.Spec, at, first)
			if !ok {
				continue
			}
			for by := range with.Pours {
				if put, also, ok := u.put(&with, by, second); ok && by != at {
					all = u.framed(all, p, put, (own+also)/2)
				}
			}
			if put, ok := u.beside(&with, second); ok {
				all = u.framed(all, p, put, (own+tradeOwn)/2)
			}
		}
	}
	return inTurn(all, framesTogether)
}

// poured lists what drafts stand on, of the families that are wanted: the proven drinks,
// and how bars pour what those hardly have a place for.
func (u *user) poured() iter.Seq[*template.Labelled] {
	return func(yield func(*template.Labelled) bool) {
		for _, all := range [][]template.Labelled{u.work.Station.Proven(), u.work.Station.Serves()} {
			for i := range all {
				if len(u.req.Families) > 0 && !slices.Contains(u.req.Families, all[i].Family) {
					continue
				}
				if !yield(&all[i]) {
					return
				}
			}
		}
	}
}

// put pours a bottle in the place of one pour of a drink, and says how much alike the
// two are, 0 to 1; false if that is no place for it.
func (u *user) put(s *flavor.Spec, at int, it *station.Item) (out flavor.Spec, own float64, ok bool) {
	old := &s.Pours[at]
	per := ratio.PerML(old.Profile)
	takes := takesPlace(it.Profile, old.Profile, s)
	if old.Profile.ID != it.Profile.ID && (s.HasProfile(it.Profile) || !u.work.Stands(old, it, &per) && !takes) {
		return out, 0, false
	}
	own = u.work.Alike(it.Profile, old.Profile)
	if takes {
		own = max(own, tradeOwn)
	} else if own < leastAlike(it.Profile, s) {
		return out, 0, false
	}
	made, ok := station.Matched(old, it, &per)
	if least := u.work.LeastUse(it.Profile); ok && it.Profile.Class.Solid() && made.ML < least {
		made, ok = station.Pour(it.Profile, made.Unit, least) // of a fruit that must go, more
	}
	if most := u.mostPut(old, it); ok && made.ML > most {
		made, ok = station.Pour(it.Profile, it.Unit, most)
	}
	if !ok || made.ML < u.work.LeastUse(it.Profile)-wording.SameML || made.ML > u.work.MostUsual(it.Profile) {
		return out, 0, false // a dash moves no bottle, and nobody pours half of one
	}
	out = s.Clone()
	out.Pours[at] = made
	return out, own, true
}

// mostPut is the most of a bottle that takes the place of another pour: of a liqueur no
// more than proven drinks usually pour of it, where any does.
func (u *user) mostPut(old *flavor.Pour, it *station.Item) float64 {
	p := it.Profile
	if p.Class.Kin() != flavor.KinLiqueur || p.ID == old.Profile.ID || u.work.Pours(it) == 0 {
		return math.Inf(1)
	}
	return max(u.work.UsualML(p), u.work.LeastUse(p))
}

// mostBeside is how many pours a drink has at most that takes one more.
const mostBeside = 5

// beside pours a bottle beside what a sour drink has already: what seasons, and an accent.
// Common practice, no source.
func (u *user) beside(s *flavor.Spec, it *station.Item) (out flavor.Spec, ok bool) {
	p := it.Profile
	sour := s.HasPart(flavor.PartSour)
	herb := p.Class.Kin() == flavor.KinHerb || p.Class.Kin() == flavor.KinSpice || p.Class.Kin() == flavor.KinBitters
	rival := s.HasKin(p.Class.Kin()) && p.Class.Kin() != flavor.KinBitters
	if !sour || rival || s.HasProfile(p) || len(s.Pours) > mostBeside || !herb && !u.work.Accent(p) {
		return out, false
	}
	made, ok := u.work.Usual(it)
	if !ok || made.ML < u.work.LeastUse(p)-wording.SameML {
		return out, false
	}
	out = s.Clone()
	out.Pours = append(out.Pours, made)
	return out, true
}

// framed appends the frame of a proven drink with a bottle in it, what this stock cannot
// pour replaced; nothing if there is nothing to replace it with.
func (u *user) framed(all []frame, p *template.Labelled, s flavor.Spec, own float64) []frame {
	s.Name, s.Notes = "", nil
	if !u.furnish(&s) || u.work.Spares(&s) {
		return all
	}
	u.work.Refit(&s)
	x := u.work.ParentOf(&s, Bottle, 1)
	return append(all, frame{spec: s, drink: &p.Spec, family: u.familyOf(&s, p), likely: x.Likely(), own: own})
}

// How much alike in smell and look a liqueur must be to the one whose place it takes:
// acid and fizz carry nearly any, spirits, vermouth and cream few. Common practice, no source.
const (
	alikeStirred = 0.5
	alikeSoured  = 0.18
	alikeElse    = 0.3
)

// leastAlike is how much alike to what it takes the place of a bottle must be in a
// proven drink.
func leastAlike(p *flavor.Profile, proven *flavor.Spec) float64 {
	switch {
	case p.Class.Kin() != flavor.KinLiqueur:
		return 0
	case proven.HasPart(flavor.PartSour) && !proven.HasPart(flavor.PartBase):
		return alikeStirred // a wine answers few, sour or not
	case proven.HasPart(flavor.PartSour), proven.HasKin(flavor.KinSparkling):
		return alikeSoured
	case proven.Method == flavor.Stir, proven.HasKin(flavor.KinMilk):
		return alikeStirred
	}
	return alikeElse
}

// takesPlace reports whether a liqueur takes the place of something else in a proven
// drink: of the syrup in a sour or a collins of spirit, of the aperitif under sparkling wine, and
// of the spirit under a soda. Common practice, no source.
func takesPlace(p, old *flavor.Profile, proven *flavor.Spec) bool {
	if p.Class.Kin() != flavor.KinLiqueur {
		return false
	}
	switch old.Class.Kin() {
	case flavor.KinSweetener:
		return !old.Class.Solid() && old.Aroma.Total() < plainAroma &&
			proven.HasPart(flavor.PartSour) && proven.HasPart(flavor.PartBase) && !proven.HasKin(flavor.KinLiqueur)
	case flavor.KinSpirit:
		return len(proven.Pours) <= mostUnderSoda && proven.HasClass(flavor.ClassSoda)
	case flavor.KinBitter:
		return proven.HasClass(flavor.ClassSparklingWine)
	}
	return false
}

// mostUnderSoda is how many pours a drink of a spirit and a soda has at most.
const mostUnderSoda = 3

// plainAroma is the sum of intensities below which a syrup is plain.
const plainAroma = 3.0

// inTurn keeps the n frames that rank highest, one of each family after another.
func inTurn(all []frame, n int) []frame {
	slices.SortStableFunc(all, func(a, b frame) int {
		return cmp.Or(cmp.Compare(b.rank(), a.rank()), strings.Compare(station.KeyOf(&a.spec), station.KeyOf(&b.spec)))
	})
	taken := make([]bool, len(all))
	var out []frame
	for len(out) < n {
		seen := map[string]bool{}
		for i := range all {
			if taken[i] || seen[all[i].family] || len(out) == n {
				continue
			}
			seen[all[i].family], taken[i] = true, true
			out = append(out, all[i])
		}
		if len(seen) == 0 {
			break
		}
	}
	return out
}

// furnish replaces what a frame cannot pour by what comes nearest, a bottle
// that must move before others; it is false if nothing does.
func (u *user) furnish(s *flavor.Spec) bool {
	gone := 0.0 // of what is left out for a guest who takes no alcohol
	for i := 0; i < len(s.Pours); i++ {
		p := &s.Pours[i]
		if it, ok := u.work.Has(p.Profile); ok {
			if made, fits := station.Pour(it.Profile, unitFor(p, it), p.ML); fits && p.Unit != flavor.Top {
				*p = made
			}
			continue
		}
		if it, ok := u.nearest(s, i); ok {
			per := ratio.PerML(p.Profile)
			made, fits := station.Matched(p, it, &per)
			if !fits || made.ML > u.work.MostUsual(it.Profile) {
				return false
			}
			*p = made
			continue
		}
		spared := u.spared(p.Profile)
		if !spared && !station.Optional(p.Profile.Class.Part()) {
			return false
		}
		if spared {
			gone += p.ML
		}
		s.Pours = slices.Delete(s.Pours, i, i+1)
		i--
	}
	if gone > 0 && s.Service != flavor.Hot {
		u.fill(s, gone)
	}
	return len(s.Pours) > 1
}

// spared reports whether a drink does without an ingredient: for a guest who takes no
// alcohol, without what brings it, where nothing stands in for it.
func (u *user) spared(p *flavor.Profile) bool {
	return u.work.Limits.Guest.NoAlcohol && p.ABV.Value > flavor.NoAlcoholABV
}

// fill lets what is long fill the glass that spirits leave empty: the soda that is
// there, else the one that most proven drinks pour.
func (u *user) fill(s *flavor.Spec, ml float64) {
	at := slices.IndexFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
	if at >= 0 {
		p := &s.Pours[at]
		if it, ok := u.work.Has(p.Profile); ok && p.Unit != flavor.Top {
			if made, fits := station.Pour(p.Profile, it.Unit, min(p.ML+ml, u.work.MostUsual(p.Profile))); fits {
				*p = made
			}
		}
		return
	}
	var soda *station.Item
	for i := range u.work.Shelf {
		it := &u.work.Shelf[i]
		if it.Profile.Class.Soft() && it.Profile.Carbonated && (soda == nil || u.work.Pours(it) > u.work.Pours(soda)) {
			soda = it
		}
	}
	if soda == nil {
		return
	}
	if p, ok := station.Pour(soda.Profile, soda.Unit, max(ml, leastFillML)); ok {
		s.Pours, s.Service = append(s.Pours, p), flavor.Long
	}
}

// leastFillML is what lengthens a drink that was made without its spirit, at least:
// three ounces, common practice, no source.
const leastFillML = 88.0

// unitFor keeps small units and gives all else the measure of the request.
func unitFor(p *flavor.Pour, it *station.Item) flavor.Unit {
	if p.Unit.Small() || it.Profile.Class.Solid() || p.Unit.Counted() {
		return p.Unit
	}
	return it.Unit
}

// commonWeight is how much nearer counts what many proven drinks pour: of two sodas
// that smell of nothing the one that every bar has.
const commonWeight = 0.2

// customWeight is how much nearer counts what the trade pours in the place of something.
const customWeight = 0.4

// mustMove is how much nearer a bottle counts that must move.
const mustMove = 0.3

// leastSweet is the sugar, in g/L, from which a soda sweetens what it lengthens: common
// practice, no source.
const leastSweet = 50.0

// sweetSoda reports whether an ingredient is a soda that sweetens: no plain water takes
// its place.
func sweetSoda(p *flavor.Profile) bool {
	return p.Class.Soft() && p.Sugar.Value >= leastSweet
}

// nearest returns what on the shelf smells and does most like a pour.
func (u *user) nearest(s *flavor.Spec, at int) (*station.Item, bool) {
	old := &s.Pours[at]
	per := ratio.PerML(old.Profile)
	var best *station.Item
	top := 0.0
	for i := range u.work.Shelf {
		it := &u.work.Shelf[i]
		if s.HasProfile(it.Profile) || !u.work.Stands(old, it, &per) || sweetSoda(old.Profile) && !sweetSoda(it.Profile) {
			continue
		}
		v := u.work.Likeness(it, old.Profile)
		v += it.Chance + commonWeight*u.work.Common(it) + customWeight*u.work.Customary(it.Profile, old.Profile)
		if it.Part == flavor.PartBase && it.Profile.ABV.Value <= flavor.NoAlcoholABV {
			v += precedent.Cosine(it.Profile.Aroma[:], old.Profile.Aroma[:]) // one is made after each spirit, and juniper stands for no rum
		}
		if slices.ContainsFunc(u.req.Bottles, func(p *flavor.Profile) bool { return p.ID == it.Profile.ID }) {
			v += mustMove
		}
		if best == nil || v > top {
			best, top = it, v
		}
	}
	return best, best != nil
}
