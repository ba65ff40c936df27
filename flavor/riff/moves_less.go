package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
)

// madeAfter is the likeness of smells from which a spirit without alcohol is made after one
// that has it: that of juniper stands for gin, and for no cognac. Common practice, no source.
const madeAfter = 0.5

// lightened pours vermouth or a fortified wine, or where less strength is wished the spirit
// without alcohol that is made after the base, in place of the base or of half of it.
func (w *work) lightened(from *station.Parent) []station.Sketch {
	at := largest(&from.Spec, flavor.PartBase)
	stirred := from.Spec.Method == flavor.Stir || from.Spec.Method == flavor.Throw
	if at < 0 || from.Spec.Pours[at].Profile.ABV.Value <= station.LightABV || !stirred && !w.Limits.Lighter() {
		return nil
	}
	old := &from.Spec.Pours[at]
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		wine := it.Profile.Class.Laced()
		free := w.Limits.Lighter() && it.Part == flavor.PartBase && it.Profile.ABV.Value <= station.LightABV &&
			precedent.Cosine(it.Profile.Aroma[:], old.Profile.Aroma[:]) >= madeAfter
		if !wine && !free || from.Spec.HasProfile(it.Profile) {
			continue
		}
		whole, ok := station.Pour(it.Profile, it.Unit, old.ML)
		half, fits := station.Pour(it.Profile, it.Unit, old.ML/2)
		mine, snaps := station.Pour(old.Profile, old.Unit, old.ML/2)
		if !ok || !fits || !snaps {
			continue
		}
		if w.Limits.Lighter() {
			s := from.Spec.Clone()
			s.Pours[at] = whole
			options = append(options, w.lifted(w.consider(from, s, KindLighter, it, old.Profile, old.Profile), it, old.Profile))
		}
		if min(mine.ML, half.ML) < station.LeastBaseML {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = mine
		s.Pours = slices.Insert(s.Pours, at+1, half)
		options = append(options, w.lifted(w.consider(from, s, KindLighter, it, nil, old.Profile), it, old.Profile))
	}
	return best(options, w.each)
}

// lifted is an option with the place in which the trade pours the ingredient that came in.
func (w *work) lifted(o option, it *station.Item, old *flavor.Profile) option {
	o.Rank += customWeight * w.Customary(it.Profile, old)
	return o
}

// turned pours the base and the largest wine beside it the other way round, where less
// strength is wished: one of gin to two of vermouth. Common practice, no source.
func (w *work) turned(from *station.Parent) []station.Sketch {
	base := largest(&from.Spec, flavor.PartBase)
	if base < 0 || !w.Limits.Lighter() {
		return nil
	}
	wine := -1
	for i := range from.Spec.Pours {
		p := &from.Spec.Pours[i]
		if p.Profile.Class.Kin() == flavor.KinWine && p.ML < from.Spec.Pours[base].ML && (wine < 0 || p.ML > from.Spec.Pours[wine].ML) {
			wine = i
		}
	}
	if wine < 0 {
		return nil
	}
	strong, mild := &from.Spec.Pours[base], &from.Spec.Pours[wine]
	less, ok := station.Pour(strong.Profile, strong.Unit, max(mild.ML, station.LeastBaseML))
	more, fits := station.Pour(mild.Profile, mild.Unit, min(strong.ML, w.MostUsual(mild.Profile)))
	if !ok || !fits {
		return nil
	}
	s := from.Spec.Clone()
	s.Pours[base], s.Pours[wine] = less, more
	likely := from.Likely()
	return []station.Sketch{{Spec: s, Kind: KindLighter, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely, Turned: true,
		Least: map[string]float64{less.Profile.ID: station.LeastBaseML}, Most: map[string]float64{less.Profile.ID: less.ML}}}
}

// The shares of a base that are poured of it where less strength is wished: common practice, no
// source.
const (
	lessMost  = 0.75
	lessLeast = 0.5
)

// lessened pours less of the base and of nothing else, where less strength is wished.
func (w *work) lessened(from *station.Parent) []station.Sketch {
	at := largest(&from.Spec, flavor.PartBase)
	if at < 0 || !w.Limits.Lighter() {
		return nil
	}
	old := &from.Spec.Pours[at]
	less, ok := station.Pour(old.Profile, old.Unit, lessMost*old.ML)
	if !ok || less.ML >= old.ML || less.ML < station.LeastBaseML {
		return nil
	}
	s := from.Spec.Clone()
	s.Pours[at] = less
	likely := from.Likely()
	return []station.Sketch{{Spec: s, Kind: KindLighter, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely, Turned: true,
		Least: map[string]float64{less.Profile.ID: max(station.LeastBaseML, lessLeast*old.ML)}, Most: map[string]float64{less.Profile.ID: less.ML}}}
}

// stiffened pours more of the base and of nothing else, where more strength is wished.
func (w *work) stiffened(from *station.Parent) []station.Sketch {
	at := largest(&from.Spec, flavor.PartBase)
	if at < 0 || !w.Limits.Stronger() {
		return nil
	}
	old := &from.Spec.Pours[at]
	more, ok := station.Pour(old.Profile, old.Unit, station.MoreBase*old.ML)
	if !ok || more.ML <= old.ML || more.ML > w.MostIn(&from.Spec, old.Profile) {
		return nil
	}
	s := from.Spec.Clone()
	s.Pours[at] = more
	likely := from.Likely()
	return []station.Sketch{{Spec: s, Kind: KindPortion, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely, Turned: true,
		Least: map[string]float64{more.Profile.ID: old.ML}, Most: map[string]float64{more.Profile.ID: more.ML}}}
}

// thinned pours plain soda in place of half of a sweet one, where there should be less of
// what the sweet one has. Common practice, no source.
func (w *work) thinned(from *station.Parent) []station.Sketch {
	at := slices.IndexFunc(from.Spec.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class.Soft() && p.Profile.Sugar.Value >= sweetSoda && w.Lessens(p.Profile)
	})
	if at < 0 {
		return nil
	}
	old := &from.Spec.Pours[at]
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if !it.Profile.Class.Soft() || !it.Profile.Carbonated || it.Profile.Sugar.Value > 0 || from.Spec.HasProfile(it.Profile) {
			continue
		}
		half, ok := station.Pour(old.Profile, old.Unit, old.ML/2)
		plain, fits := station.Pour(it.Profile, it.Unit, old.ML/2)
		if !ok || !fits {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = half
		s.Pours = slices.Insert(s.Pours, at+1, plain)
		options = append(options, w.consider(from, s, KindLength, it, nil, old.Profile))
	}
	return best(options, thinnedTried)
}

// thinnedTried is how many plain sodas are tried in place of half of a sweet one.
const thinnedTried = 2

// Less than a quarter ounce is poured by the spoon: of up to so much, in mL, half goes on.
const (
	spoonedMost  = 8.0
	spoonedShare = 0.5
)

// spooned pours half of an accent by the spoon, where there should be less of what it
// brings: a jigger has no smaller step. Common practice, no source.
func (w *work) spooned(from *station.Parent) (out []station.Sketch) {
	for i := range from.Spec.Pours {
		old := &from.Spec.Pours[i]
		if !old.Unit.Jigger() || old.ML > spoonedMost || !w.Brings(old.Profile) {
			continue
		}
		p, ok := station.Pour(old.Profile, flavor.Barspoon, spoonedShare*old.ML)
		if !ok || p.ML >= old.ML {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[i] = p
		likely := from.Likely()
		out = append(out, station.Sketch{Spec: s, Kind: KindPortion, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely, Turned: true,
			Most: map[string]float64{p.Profile.ID: p.ML}})
	}
	return out
}
