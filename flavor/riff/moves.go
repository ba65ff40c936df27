package riff

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// Kind is the move that makes a riff.
type Kind string

// The moves.
const (
	KindBase      Kind = "base"      // another base
	KindModifier  Kind = "modifier"  // another modifier
	KindSweetener Kind = "sweetener" // another sweetener
	KindSour      Kind = "sour"      // another sour
	KindSpice     Kind = "spice"     // other bitters, herbs or spices
	KindLength    Kind = "length"    // other length
	KindTexture   Kind = "texture"   // other egg, foam or cream
	KindSplit     Kind = "split"     // half of the base another one
	KindLengthen  Kind = "lengthen"  // something long on top
	KindMethod    Kind = "method"    // mixed or served another way
	KindLighter   Kind = "lighter"   // less alcohol, by what is poured
	KindAdd       Kind = "add"       // something small added
	KindWithout   Kind = "without"   // something left out
	KindPortion   Kind = "portion"   // the same things in other amounts
	KindBottle    Kind = "bottle"    // built around a bottle that must move
)

// kindOfPart is the move that pours a part anew.
var kindOfPart = map[flavor.Part]Kind{
	flavor.PartBase: KindBase, flavor.PartModifier: KindModifier, flavor.PartSweetener: KindSweetener, flavor.PartSour: KindSour,
	flavor.PartLength: KindLength, flavor.PartTexture: KindTexture, flavor.PartSeasoning: KindSpice,
}

// How many drafts of one move go on to be solved.
const (
	draftsEach = 12 // for one pour
	draftsSome = 6  // for one pour, where there are several drinks to start from
	draftsFew  = 8  // for a move that adds something
)

// parent is a drink that moves start from.
type parent struct {
	spec     flavor.Spec
	kind     Kind // the last move that made it
	moves    int
	lost     int // pours left out without anything in their place
	made     makeUp
	products []float64 // of made with the proven drinks
}

func (w *work) parentOf(s *flavor.Spec, kind Kind, moves int) *parent {
	p := &parent{spec: *s, kind: kind, moves: moves, made: make(makeUp, len(w.riffer.book.classes)+flavor.NumFamilies)}
	for i := range s.Pours {
		if !pouredBefore(s, i) {
			p.made.add(w.madeOf(s.Pours[i].Profile), 1)
		}
	}
	p.products = w.riffer.book.products(p.made)
	return p
}

// parentFrom is a solved drink that further moves start from.
func (w *work) parentFrom(s *solved) *parent {
	p := w.parentOf(&s.spec, s.kind, s.moves)
	p.lost = s.lost
	return p
}

func (w *work) madeOf(p *flavor.Profile) makeUp {
	if it, ok := w.has(p); ok {
		return it.made
	}
	return makeUpOf(p, w.riffer.book.classes)
}

// productsOf returns the products of an ingredient with the proven drinks.
func (w *work) productsOf(p *flavor.Profile) []float64 {
	it, ok := w.has(p)
	if !ok {
		return w.riffer.book.products(makeUpOf(p, w.riffer.book.classes))
	}
	if it.products == nil {
		it.products = w.riffer.book.products(it.made)
	}
	return it.products
}

// likelyWith is how likely a drink is once came came in and went went; either
// may be nil.
func (w *work) likelyWith(from *parent, came, went *flavor.Profile) float64 {
	made, products := slices.Clone(from.made), slices.Clone(from.products)
	shift := func(p *flavor.Profile, times float64) {
		if p == nil {
			return
		}
		made.add(w.madeOf(p), times)
		for i, v := range w.productsOf(p) {
			products[i] += times * v
		}
	}
	shift(came, 1)
	shift(went, -1)
	return likely(made, products)
}

// option is a draft and the ingredient that it brings in.
type option struct {
	draft
	class flavor.Class
}

// consider makes an option of a spec in which it came in; went is what it takes
// the place of, nil if that stays, and old what it is compared with, which may
// be nil too.
func (w *work) consider(from *parent, s flavor.Spec, kind Kind, it *item, went, old *flavor.Profile) option {
	likely := w.likelyWith(from, it.profile, went)
	return option{class: it.profile.Class,
		draft: draft{spec: s, kind: kind, moves: from.moves + 1, lost: from.lost, likely: likely, rank: likely + it.chance + w.toward(it, old)}}
}

// towardWeight is how much a wish lifts an ingredient that leads there.
const towardWeight = 0.6

// toward says how much nearer to the wishes an ingredient leads than what it
// takes the place of.
func (w *work) toward(it *item, old *flavor.Profile) float64 {
	var sum float64
	for i := range w.limits.steps {
		x := &w.limits.steps[i]
		v := leaning(x.row, it.profile, it.per)
		if old != nil {
			v -= leaning(x.row, old, template.PerML(old))
		}
		if !x.up {
			v = -v
		}
		sum += towardWeight * max(-1, min(1, v))
	}
	return sum
}

// leaning is how much of a row a neat ingredient has, about 1 for what leads it.
func leaning(row int, p *flavor.Profile, per template.Equivalents) float64 {
	switch row {
	case rowStrong:
		return per[template.Strong]
	case rowSweet:
		return per[template.Sweet]
	case rowSour:
		return per[template.Sour]
	case rowBitter:
		return per[template.Bitter]
	case rowVolume:
		return per[template.Long]
	}
	return p.Aroma[row-rowAroma] / 10
}

// best keeps the n options that rank highest, taking the classes in turn so that
// a shelf of gins does not crowd out all else.
func best(options []option, n int) []draft {
	// Of two that rank alike the first on the shelf stays first: that is by id.
	slices.SortStableFunc(options, func(a, b option) int { return cmp.Compare(b.rank, a.rank) })
	taken := make([]bool, len(options))
	var out []draft
	for len(out) < n {
		seen := map[flavor.Class]bool{}
		for i := range options {
			if taken[i] || seen[options[i].class] || len(out) == n {
				continue
			}
			seen[options[i].class], taken[i] = true, true
			out = append(out, options[i].draft)
		}
		if len(seen) == 0 {
			break
		}
	}
	return out
}

// poured reports whether a spec pours p already.
func poured(s *flavor.Spec, p *flavor.Profile) bool {
	return slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool { return x.Profile.ID == p.ID })
}

// swaps pours one pour anew, with everything on the shelf that does the same.
func (w *work) swaps(from *parent, at, n int) []draft {
	old := &from.spec.Pours[at]
	per := template.PerML(old.Profile)
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		if poured(&from.spec, it.profile) || !w.stands(old, it, &per) {
			continue
		}
		p, ok := matched(old, it, &per)
		if !ok || p.ML > max(old.ML, mostUsual(it.profile)) {
			continue
		}
		s := from.spec.Clone()
		s.Pours[at] = p
		options = append(options, w.consider(from, s, kindOfPart[old.Profile.Class.Part()], it, old.Profile, old.Profile))
	}
	return best(options, n)
}
