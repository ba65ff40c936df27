package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/riff/station"
)

// variations lists the drafts that one move away from a drink leads to.
func (w *work) variations(from *station.Parent) []station.Sketch {
	var out []station.Sketch
	for i := range from.Spec.Pours {
		if w.From.HasProfile(from.Spec.Pours[i].Profile) { // what came in is not changed again
			out = append(out, w.swaps(from, i, w.each)...)
		}
	}
	out = append(out, w.splits(from)...)
	out = append(out, w.lengthened(from)...)
	out = append(out, w.relengthened(from)...)
	out = append(out, w.lightened(from)...)
	out = append(out, w.turned(from)...)
	out = append(out, w.lessened(from)...)
	out = append(out, w.stiffened(from)...)
	out = append(out, w.thinned(from)...)
	out = append(out, w.spooned(from)...)
	out = append(out, w.served(from)...)
	out = append(out, w.added(from)...)
	out = append(out, w.foamed(from)...)
	out = append(out, w.sweetenedBy(from)...)
	out = append(out, w.wished(from)...)
	out = append(out, w.carried(from)...)
	// What has lost a pour already loses no other, or it is no riff of the drink; one more
	// where fewer pours are asked for.
	if w.Limits.Wished() && (from.Lost == 0 || from.Lost == 1 && w.Limits.Simpler()) {
		out = append(out, w.leftOut(from)...)
	}
	return out
}

// largest returns the pour of a part that is poured most, or −1.
func largest(s *flavor.Spec, part flavor.Part) int {
	at := -1
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == part && (at < 0 || s.Pours[i].ML > s.Pours[at].ML) {
			at = i
		}
	}
	return at
}

// leastSplitML is the least that each base of two gives, three quarters of an ounce
// as a jigger rounds it: less of each is no base. Common practice, no source.
const leastSplitML = 20.0

// splits shares the base between it and another one; what has two has enough.
func (w *work) splits(from *station.Parent) []station.Sketch {
	at := largest(&from.Spec, flavor.PartBase)
	if at < 0 || without(&from.Spec, at).HasPart(flavor.PartBase) {
		return nil
	}
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		share := evenSplit
		if w.Toward(it, from.Spec.Pours[at].Profile) > 0 {
			share = accentSplit
		}
		options = w.split(options, from, at, it, share)
	}
	return best(options, w.each)
}

// How much of a base of two is the one that came in: half, and at first a quarter
// where a wish leads to it, as of what is smoky. Common practice, no source.
const (
	evenSplit   = 0.5
	accentSplit = 0.25
)

// split appends the base shared with another one that comes in as so much of it.
func (w *work) split(options []option, from *station.Parent, at int, it *station.Item, share float64) []option {
	old := &from.Spec.Pours[at]
	per := ratio.PerML(old.Profile)
	if from.Spec.HasProfile(it.Profile) || it.Part != flavor.PartBase || !w.Stands(old, it, &per) {
		return options
	}
	part, least := *old, leastSplitML
	part.ML *= share
	if share < evenSplit {
		least = station.LeastBaseML
	}
	mine, ok := station.Pour(old.Profile, old.Unit, (1-share)*old.ML)
	other, fits := station.Matched(&part, it, &per)
	if !ok || !fits || min(mine.ML, other.ML) < least {
		return options
	}
	s := from.Spec.Clone()
	s.Pours[at] = mine
	s.Pours = slices.Insert(s.Pours, at+1, other)
	o := w.consider(from, s, KindSplit, it, nil, old.Profile)
	o.Least = map[string]float64{old.Profile.ID: least, it.Profile.ID: least}
	return append(options, o)
}

// Length poured on top, in mL, and the largest drink that still takes it.
const (
	topUpML    = 90.0
	topUpMost  = 150.0
	sweetSoda  = 50.0 // g/L of sugar in a soda that sweetens
	bitterSoda = 0.1  // of red aperitif, in a millilitre of one that is bitter too
)

// lengthened pours something long on top and serves the drink long.
func (w *work) lengthened(from *station.Parent) []station.Sketch {
	if from.Spec.VolumeML() > topUpMost || from.Lost > 0 && w.Limits.Guest.NoAlcohol {
		return nil // what is left without its spirit is no mixer for another juice
	}
	stirred := from.Spec.Method == flavor.Stir || from.Spec.Method == flavor.Throw
	fizzes := slices.ContainsFunc(from.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if it.Part != flavor.PartLength || from.Spec.HasProfile(it.Profile) || it.Profile.Class.Solid() || it.Profile.Class.Kin() == flavor.KinFruit || fizzes && it.Profile.Carbonated {
			continue
		}
		if stirred && it.Profile.Class.Shaken() && w.Toward(it, nil) <= 0 {
			continue // what is stirred is lengthened with what is clear
		}
		if w.cloys(from, it) || it.Profile.Class.Free() && !it.Profile.Carbonated && from.Spec.Service != flavor.Hot {
			continue // and nothing cold with water from the tap
		}
		if from.Spec.Service == flavor.Hot && !it.Profile.Class.Heated() {
			continue // and what is hot with what is hot
		}
		p, ok := station.Pour(it.Profile, it.Unit, topUpML)
		if !ok {
			continue
		}
		s := from.Spec.Clone()
		s.Pours = append(s.Pours, p)
		options = append(options, w.consider(from, long(s), KindLengthen, it, nil, nil))
	}
	return append(best(options, w.each), w.bucked(from)...)
}

// long is a drink that something was poured on top of, served as such drinks are.
func long(s flavor.Spec) flavor.Spec {
	if s.Service != flavor.Hot {
		s.Service = flavor.Long
	}
	if !s.Method.Shaken() {
		s.Method = flavor.Build
	}
	return s
}

// bucked lengthens a drink with a sweet soda in place of its syrup, as a sour becomes a
// buck: with both it cloys. Common practice, no source.
func (w *work) bucked(from *station.Parent) []station.Sketch {
	at := largest(&from.Spec, flavor.PartSweetener)
	fizzes := slices.ContainsFunc(from.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
	if at < 0 || from.Lost > 0 || fizzes || from.Spec.Service == flavor.Hot || largest(&from.Spec, flavor.PartSour) < 0 || largest(&from.Spec, flavor.PartBase) < 0 || largest(&from.Spec, flavor.PartTexture) >= 0 {
		return nil
	}
	syrup := from.Spec.Pours[at].Profile
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if !it.Profile.Class.Soft() || !it.Profile.Carbonated || it.Profile.Sugar.Value < sweetSoda {
			continue
		}
		p, ok := station.Pour(it.Profile, it.Unit, buckML)
		if !ok {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = p
		o := w.consider(from, long(s), KindLengthen, it, syrup, nil)
		o.Lost++ // the syrup
		options = append(options, o)
	}
	return best(options, bucksTried)
}

// What a buck is lengthened with, in mL, and how many sodas are tried.
const (
	buckML     = 100.0
	bucksTried = 6
)

// cloys reports whether what is stirred, or has its syrup already, would be lengthened with
// what is sweet and nothing else, for the length alone.
func (w *work) cloys(from *station.Parent, it *station.Item) bool {
	stirred := from.Spec.Method == flavor.Stir || from.Spec.Method == flavor.Throw
	syrup := largest(&from.Spec, flavor.PartSweetener)
	sweet := syrup >= 0 && from.Spec.Pours[syrup].ML >= sweetensML
	return (stirred || sweet) && it.Profile.Carbonated && it.Profile.Sugar.Value >= sweetSoda && it.Per[ratio.Bitter] < bitterSoda && !w.Tastes(it.Profile)
}

// servings lists the other ways in which a drink may be mixed and served.
func servings(s *flavor.Spec) []serve.Way {
	if s.Service == flavor.Hot || s.Service == flavor.Neat {
		return nil
	}
	switch s.Method {
	case flavor.Shake:
		return []serve.Way{{Method: flavor.Shake, Service: flavor.Up}, {Method: flavor.Shake, Service: flavor.Rocks}, {Method: flavor.Swizzle, Service: flavor.Crushed}}
	case flavor.DryShake:
		return []serve.Way{{Method: flavor.DryShake, Service: flavor.Up}, {Method: flavor.DryShake, Service: flavor.Rocks}}
	case flavor.Stir, flavor.Throw:
		return []serve.Way{{Method: flavor.Stir, Service: flavor.Up}, {Method: flavor.Stir, Service: flavor.Rocks}, {Method: flavor.Throw, Service: flavor.Up}}
	case flavor.Swizzle, flavor.Blend:
		return []serve.Way{{Method: flavor.Shake, Service: flavor.Up}, {Method: flavor.Shake, Service: flavor.Rocks}, {Method: flavor.Swizzle, Service: flavor.Crushed}}
	}
	return []serve.Way{{Method: flavor.Build, Service: flavor.Rocks}, {Method: flavor.Build, Service: flavor.Long}, {Method: flavor.Build, Service: flavor.Crushed}, {Method: flavor.Stir, Service: flavor.Up}}
}

// served mixes and serves the same pours another way.
func (w *work) served(from *station.Parent) []station.Sketch {
	likely := from.Likely()
	var out []station.Sketch
	for _, way := range servings(&from.Spec) {
		if way.Method == from.Spec.Method && way.Service == from.Spec.Service {
			continue
		}
		s := from.Spec.Clone()
		if s.Method, s.Service = way.Method, way.Service; !w.Served(&s) {
			continue
		}
		out = append(out, station.Sketch{Spec: s, Kind: KindMethod, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely})
	}
	return out
}

// addedML is what a modifier that is added comes in at, and addedDashes the
// same for bitters.
const (
	addedML     = 15.0
	addedDashes = 2
	addedShare  = 3.0 // of the most that is poured of it, where that is less

	drySweetML    = 7.0   // mL of syrup, and of lemon juice, below which a drink is dry: it takes little that is sweet
	sweetModifier = 100.0 // g/L of sugar in a modifier that sweetens
)

// added pours something small beside the rest: bitters, herbs or a modifier.
func (w *work) added(from *station.Parent) []station.Sketch {
	var options []option
	e := ratio.EquivalentsOf(&from.Spec)
	dry := e[ratio.Sweet] < drySweetML && e[ratio.Sour] < drySweetML
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if from.Spec.HasProfile(it.Profile) || !w.Serves(it.Profile) {
			continue
		}
		var p flavor.Pour
		ok := false
		switch it.Profile.Class.Kin() {
		case flavor.KinBitter, flavor.KinLiqueur, flavor.KinWine:
			most := addedML
			if dry && it.Profile.Sugar.Value >= sweetModifier {
				most = leastCarriedML
			}
			p, ok = station.Pour(it.Profile, it.Unit, min(most, w.MostUsual(it.Profile)/addedShare))
		case flavor.KinBitters:
			p, ok = station.Count(it.Profile, it.Unit, addedDashes)
		case flavor.KinHerb, flavor.KinSpice:
			p, ok = w.Usual(it)
		case flavor.KinSweetener, flavor.KinFruit, flavor.KinJuice:
			if w.Toward(it, nil) > 0 {
				p, ok = w.accent(it)
			}
		case flavor.KinSaline, flavor.KinSavoury:
			if w.Toward(it, nil) > 0 { // nobody salts a drink unasked
				p, ok = w.Usual(it)
			}
		}
		if !ok {
			continue
		}
		s := from.Spec.Clone()
		s.Pours = append(s.Pours, p)
		options = append(options, w.consider(from, s, KindAdd, it, nil, nil))
	}
	return best(options, w.few())
}

// accent is a pour of a flavoured syrup, fruit or juice beside what is there.
func (w *work) accent(it *station.Item) (flavor.Pour, bool) {
	if it.Profile.Class.Solid() {
		return w.Usual(it)
	}
	return station.Pour(it.Profile, it.Unit, min(addedML, w.MostUsual(it.Profile)))
}

// foamed adds the white of an egg, or what foams like it, to a drink that is
// shaken with something sour, and not on crushed ice, which breaks the foam.
func (w *work) foamed(from *station.Parent) []station.Sketch {
	herbs := from.Spec.HasKin(flavor.KinHerb)
	if !from.Spec.Method.Shaken() || from.Spec.Service == flavor.Crushed || herbs || !w.spareFoam() || largest(&from.Spec, flavor.PartSour) < 0 || largest(&from.Spec, flavor.PartTexture) >= 0 {
		return nil
	}
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if !it.Profile.Whitens() {
			continue
		}
		p, ok := station.Count(it.Profile, it.Unit, 1)
		if !ok {
			continue
		}
		s := from.Spec.Clone()
		s.Pours, s.Method = append(s.Pours, p), flavor.DryShake
		options = append(options, w.consider(from, s, KindTexture, it, nil, nil))
	}
	return best(options, foamsTried)
}

const foamsTried = 2

// spareFoam reports whether egg or foam may come in: unasked it meets no wish.
func (w *work) spareFoam() bool {
	return slices.ContainsFunc(w.Shelf, func(it station.Item) bool {
		return it.Profile.Class.Kin() == flavor.KinFoam && w.Serves(it.Profile)
	})
}

// sweetenedBy lets a liqueur do the work of the syrup, or a syrup that of the
// liqueur where there is no syrup.
func (w *work) sweetenedBy(from *station.Parent) []station.Sketch {
	at, by := largest(&from.Spec, flavor.PartSweetener), flavor.KinLiqueur
	liqueur := func(p flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinLiqueur }
	if at < 0 {
		by = flavor.KinSweetener
		if at = slices.IndexFunc(from.Spec.Pours, liqueur); at >= 0 && slices.ContainsFunc(from.Spec.Pours[at+1:], liqueur) {
			return nil // two liqueurs are what a drink is about, and not only its sugar
		}
	}
	if at < 0 || !w.From.HasProfile(from.Spec.Pours[at].Profile) {
		return nil
	}
	old := &from.Spec.Pours[at]
	per := ratio.PerML(old.Profile)
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if it.Profile.Class.Kin() != by || it.Profile.Class.Solid() || from.Spec.HasProfile(it.Profile) || it.Per[ratio.Sweet] <= 0 || !station.Sours(&per, &it.Per) {
			continue
		}
		p, ok := station.Pour(it.Profile, it.Unit, old.ML*station.Ratio(per[ratio.Sweet], it.Per[ratio.Sweet]))
		if !ok {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = p
		options = append(options, w.consider(from, s, KindSweetener, it, old.Profile, old.Profile))
	}
	return best(options, draftsFew)
}

// carriesML is the least of a modifier that a drink is known by, three quarters of an
// ounce as a jigger rounds it: common practice, no source.
const carriesML = 20.0

// sweetensML is as much syrup as sweetens a drink: a quarter ounce, common practice, no
// source.
const sweetensML = 7.0
