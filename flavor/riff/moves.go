package riff

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/station"
)

// The moves.
const (
	KindBase      station.Kind = "base"      // another base
	KindModifier  station.Kind = "modifier"  // another modifier
	KindSweetener station.Kind = "sweetener" // another sweetener
	KindSour      station.Kind = "sour"      // another sour
	KindSpice     station.Kind = "spice"     // other bitters, herbs or spices
	KindLength    station.Kind = "length"    // other length
	KindTexture   station.Kind = "texture"   // other egg, foam or cream
	KindSplit     station.Kind = "split"     // half of the base another one
	KindLengthen  station.Kind = "lengthen"  // something long on top
	KindMethod    station.Kind = "method"    // mixed or served another way
	KindLighter   station.Kind = "lighter"   // less alcohol, by what is poured
	KindAdd       station.Kind = "add"       // something small added
	KindWithout   station.Kind = "without"   // something left out
	KindPortion   station.Kind = "portion"   // the same things in other amounts
)

// kindOfPart is the move that pours a part anew.
var kindOfPart = map[flavor.Part]station.Kind{
	flavor.PartBase: KindBase, flavor.PartModifier: KindModifier, flavor.PartSweetener: KindSweetener, flavor.PartSour: KindSour,
	flavor.PartLength: KindLength, flavor.PartTexture: KindTexture, flavor.PartSeasoning: KindSpice,
}

// How many drafts of one move go on to be solved.
const (
	draftsEach = 12 // for one pour
	draftsSome = 6  // for one pour, where there are several drinks to start from
	draftsFew  = 8  // for a move that adds something
)

// option is a draft and the ingredient that it brings in.
type option struct {
	station.Sketch
	class flavor.Class
	odd   float64 // how strange the company is that its pours keep
}

// consider makes an option of a spec in which it came in; went is what it takes
// the place of, nil if that stays, and old what it is compared with, which may
// be nil too.
func (w *work) consider(from *station.Parent, s flavor.Spec, kind station.Kind, it *station.Item, went, old *flavor.Profile) option {
	likely := w.LikelyWith(from, it.Profile, went)
	return option{class: it.Profile.Class, odd: w.Odd(&s),
		Sketch: station.Sketch{Spec: s, Kind: kind, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely + it.Chance + commonWeight*w.Common(it) + towardWeight*w.Toward(it, old)}}
}

// commonWeight is how much an ingredient is lifted that many proven drinks pour:
// what a bartender reaches for comes before what stands behind it.
const commonWeight = 0.12

// oddWeight is how much an ingredient is lowered by each unit of strangeness.
const oddWeight = 0.3

// towardWeight is how much a wish lifts an ingredient that leads there.
const towardWeight = 0.6

// customWeight is how much an ingredient is lifted that the trade pours in place of what may
// not be poured.
const customWeight = 0.6

// best keeps the n options that rank highest, the strange ones lowered, taking the classes in turn so that
// a shelf of gins does not crowd out all else.
func best(options []option, n int) []station.Sketch {
	// Of two that rank alike the first on the shelf stays first: that is by id.
	slices.SortStableFunc(options, func(a, b option) int { return cmp.Compare(b.Rank-oddWeight*b.odd, a.Rank-oddWeight*a.odd) })
	taken := make([]bool, len(options))
	var out []station.Sketch
	for len(out) < n {
		seen := map[flavor.Class]bool{}
		for i := range options {
			if taken[i] || seen[options[i].class] || len(out) == n {
				continue
			}
			seen[options[i].class], taken[i] = true, true
			out = append(out, options[i].Sketch)
		}
		if len(seen) == 0 {
			break
		}
	}
	return out
}

// swaps pours one pour anew, with everything on the shelf that does the same.
func (w *work) swaps(from *station.Parent, at, n int) []station.Sketch {
	old := &from.Spec.Pours[at]
	per := ratio.PerML(old.Profile)
	_, there := w.Has(old.Profile)
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		custom := !there && w.Customary(it.Profile, old.Profile) > 0
		if from.Spec.HasProfile(it.Profile) || !custom && !w.Stands(old, it, &per) || from.Spec.Service == flavor.Hot && it.Profile.Carbonated {
			continue
		}
		p, ok := station.Matched(old, it, &per)
		if old.Profile.Base() && w.Limits.Stronger() {
			p, ok = station.Pour(it.Profile, it.Unit, old.ML) // by the same measure what is bottled stronger is so
		}
		if !ok || custom && w.lengthensIdly(from, old, it) || w.Limits.Guest.NoAlcohol && old.Profile.Class.Free() && it.Profile.Class.Kin() != flavor.KinTea {
			continue
		}
		tops := old.Profile.Base() && it.Profile.Class.Soft() && it.Profile.Carbonated && p.ML < toppedML
		if tops {
			p, _ = station.Pour(it.Profile, it.Unit, toppedML)
		}
		if p, ok = w.within(p); !ok || carries(it.Part) && p.ML < leastWithin*old.ML {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = p
		if tops {
			s = long(s)
		}
		sweetened := w.sweetenedJuice(&s, at, old, &per)
		syrup, less := cutSyrup(&s, p.ML*(it.Per[ratio.Sweet]-per[ratio.Sweet]), old.Profile)
		o := w.consider(from, s, kindOfPart[old.Profile.Class.Part()], it, old.Profile, old.Profile)
		if !there {
			o = w.lifted(o, it, old.Profile)
		}
		o.Least = map[string]float64{it.Profile.ID: min(p.ML, leastWithin*old.ML)}
		if sweetened != nil {
			o.Least[sweetened.ID] = sweetensML
		}
		if less {
			o.Most = map[string]float64{syrup.Profile.ID: syrup.ML}
			if syrup.ML == 0 {
				o.Lost++
			}
		}
		options = append(options, o)
	}
	return best(options, n)
}

// sweetenedJuice adds the plainest syrup at hand to a drink that pours a juice at a place where a
// liqueur was, as much as the juice sweetens less, and returns that syrup; nil if there is no need
// or no syrup. Orange juice alone is no orange liqueur: without its sugar the lime is too sharp.
func (w *work) sweetenedJuice(s *flavor.Spec, at int, old *flavor.Pour, per *ratio.Equivalents) *flavor.Profile {
	juice := &s.Pours[at]
	if old.Profile.Class.Kin() != flavor.KinLiqueur || juice.Profile.Class.Kin() != flavor.KinJuice {
		return nil
	}
	lacks := old.ML*per[ratio.Sweet] - juice.ML*ratio.PerML(juice.Profile)[ratio.Sweet]
	if lacks < sweetensML/2 {
		return nil
	}
	if has := largest(s, flavor.PartSweetener); has >= 0 {
		x := &s.Pours[has]
		if p, ok := station.Pour(x.Profile, x.Unit, x.ML+lacks/max(tiny, ratio.PerML(x.Profile)[ratio.Sweet])); ok && !x.Profile.Class.Solid() {
			*x = p
		}
		return nil
	}
	var by *station.Item
	for i := range w.Shelf {
		it := &w.Shelf[i]
		plain := it.Part == flavor.PartSweetener && !it.Profile.Class.Solid() && it.Profile.Class == flavor.ClassSyrup && it.Per[ratio.Sweet] > 0
		if plain && (by == nil || w.Common(it) > w.Common(by)) {
			by = it
		}
	}
	if by == nil {
		return nil
	}
	p, ok := station.Pour(by.Profile, by.Unit, lacks/by.Per[ratio.Sweet])
	if !ok {
		return nil
	}
	s.Pours = append(s.Pours, p)
	return by.Profile
}

// tiny is what a share is divided by where there is none.
const tiny = 1e-9

// lengthensIdly reports whether a soda or a tea would take the place of the spirit of something
// savoury, or a soda that of a drink which sparkles already: what is left of those is a drink, and
// nobody pours tonic on tomato, or two sodas.
func (w *work) lengthensIdly(from *station.Parent, old *flavor.Pour, it *station.Item) bool {
	return old.Profile.Base() && it.Part == flavor.PartLength && slices.ContainsFunc(from.Spec.Pours, func(p flavor.Pour) bool {
		return station.Savoury(&p) || p.Profile.Carbonated && it.Profile.Carbonated
	})
}

// toppedML is how much soda takes the place of a spirit for a guest who drinks none, four ounces: a
// sour without its gin is a lemonade, and served long. Common practice, no source.
const toppedML = 118.0

// cutSyrup takes so much syrup out of a drink as a soda brings that is poured in place of a
// drier one, all of it where hardly any is left, and returns what is left of the syrup; less
// is false if nothing is taken. Tonic in place of soda water sweetens as a syrup does.
func cutSyrup(s *flavor.Spec, brought float64, was *flavor.Profile) (left flavor.Pour, less bool) {
	at := largest(s, flavor.PartSweetener)
	if at < 0 || !was.Class.Soft() || brought < sweetensML {
		return left, false
	}
	old := s.Pours[at]
	per := ratio.PerML(old.Profile)[ratio.Sweet]
	if per <= 0 || old.Profile.Class.Solid() {
		return left, false
	}
	if rest := old.ML - brought/per; rest >= sweetensML/2 {
		if p, ok := station.Pour(old.Profile, old.Unit, rest); ok && p.ML < old.ML {
			s.Pours[at] = p
			return p, true
		}
	}
	s.Pours = slices.Delete(s.Pours, at, at+1)
	return flavor.Pour{Profile: old.Profile}, true
}

// carries reports whether a part is what a drink is ordered by.
func carries(p flavor.Part) bool { return p == flavor.PartBase || p == flavor.PartModifier }

// leastWithin is how much of a pour must be left where no more is ever poured.
const leastWithin = 0.4

// within brings a pour down to the most that is poured; it is false if too
// little is left to do the work of what it stands for.
func (w *work) within(p flavor.Pour) (flavor.Pour, bool) {
	most := w.MostOf(p.Profile)
	if p.ML <= most {
		return p, true
	}
	if most < leastWithin*p.ML {
		return p, false
	}
	for _, a := range slices.Backward(measure.Neighbours(p.Amount, p.Unit, mostStepsDown)) {
		if a < p.Amount && a*p.ML/p.Amount <= most {
			p.Amount, p.ML = a, a*p.ML/p.Amount
			return p, true
		}
	}
	return p, false
}

const mostStepsDown = 20
