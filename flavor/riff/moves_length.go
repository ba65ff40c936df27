package riff

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
)

// The shares of its length that a drink is lengthened and shortened to: two ounces more, or
// less, of five. Common practice, no source.
const (
	longerShare  = 1.4
	shorterShare = 0.6
)

// relengthened pours more or less of what lengthens a drink, and as much as before of the rest,
// where a longer or a shorter one is wished: less of its spirit is a smaller measure and no
// shorter drink. What is lengthened with soda or water is made longer with that.
func (w *work) relengthened(from *station.Parent) []station.Sketch {
	longer, shorter := w.Limits.Relengths()
	if !longer && !shorter || w.moved(from) {
		return nil
	}
	s := from.Spec.Clone()
	least, most := map[string]float64{}, map[string]float64{}
	moved, by := false, lengthenedBy(&from.Spec)
	for i := range s.Pours {
		old := &from.Spec.Pours[i]
		ml := old.ML
		switch {
		case !station.Lengthens(old):
		case shorter:
			ml *= shorterShare
		case i == by:
			ml = min(longerShare*ml, max(ml, w.MostIn(&from.Spec, old.Profile)))
		}
		if p, ok := station.Pour(old.Profile, old.Unit, ml); ok && ml != old.ML {
			p.After = old.After
			s.Pours[i], moved = p, moved || p.ML != old.ML
		}
		least[old.Profile.ID], most[old.Profile.ID] = s.Pours[i].ML, s.Pours[i].ML
	}
	if !moved {
		return nil
	}
	likely := from.Likely()
	return []station.Sketch{{Spec: s, Kind: KindLength, Moves: from.Moves + 1, Lost: from.Lost, Likely: likely, Rank: likely, Turned: true, Least: least, Most: most}}
}

// moved reports whether a drink is longer or shorter already by something that lengthens the one asked
// about.
func (w *work) moved(from *station.Parent) bool {
	return slices.ContainsFunc(from.Spec.Pours, func(p flavor.Pour) bool {
		was := w.From.MLOf(p.Profile.Is)
		return station.Lengthens(&p) && was > 0 && math.Abs(p.ML-was) > wording.SameML
	})
}

// lengthenedBy is the pour that makes a drink longer: the largest of its sodas and waters that do
// not sweeten it, else the largest that lengthens it; −1 if none does.
func lengthenedBy(s *flavor.Spec) int {
	at, plain := -1, false
	for i := range s.Pours {
		p := &s.Pours[i]
		if !station.Lengthens(p) {
			continue
		}
		is := (p.Profile.Class.Soft() || p.Profile.Class.Free()) && p.Profile.Sugar.Value <= 0
		if at < 0 || is && !plain || is == plain && p.ML > s.Pours[at].ML {
			at, plain = i, is
		}
	}
	return at
}
