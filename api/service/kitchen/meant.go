package kitchen

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/reading"
)

// Remedies returns what [remedy.For] finds for the faults of a draft.
func (k *Kitchen) Remedies(r remedy.Request) ([]remedy.Remedies, error) { return remedy.For(k, r) }

// MeaningsOf returns what [remedy.MeaningsOf] finds for a line that was read.
func (k *Kitchen) MeaningsOf(r *reading.Reading, line int, g guest.Guest) remedy.Meanings {
	return remedy.MeaningsOf(k, r, line, g)
}

// Others returns up to n ingredients that a written name may mean other than the one it
// was read as: those of its class whose name holds every word that was written come
// first, then others whose name does, then the rest of the class. Of each, what is in
// stock and what many proven drinks pour comes first.
func (k *Kitchen) Others(written string, read *flavor.Profile, n int) []*flavor.Profile {
	type other struct {
		*flavor.Profile
		rank   int
		favour float64
	}
	var found []other
	favour, words := k.favour(k.stock), strings.Fields(flavor.NormaliseName(written))
	for _, p := range k.Catalogue.Profiles() {
		holds, kind := holdsAll(p.Name, words), p.Class == read.Class
		switch {
		case p.ID == read.ID || !holds && !kind:
		case holds && kind:
			found = append(found, other{p, 0, favour(p.ID)})
		case holds:
			found = append(found, other{p, 1, favour(p.ID)})
		default:
			found = append(found, other{p, 2, favour(p.ID)})
		}
	}
	slices.SortFunc(found, func(a, b other) int {
		return cmp.Or(a.rank-b.rank, cmp.Compare(b.favour, a.favour), strings.Compare(a.Name, b.Name))
	})
	var out []*flavor.Profile
	for _, o := range found[:min(n, len(found))] {
		out = append(out, o.Profile)
	}
	return out
}

// holdsAll reports whether every word is one of a name; false if there is none.
func holdsAll(name string, words []string) bool {
	if len(words) == 0 || !strings.Contains(strings.ToLower(name), words[0][:1]) {
		return false
	}
	of := strings.Fields(flavor.NormaliseName(name))
	for _, w := range words {
		if !slices.Contains(of, w) {
			return false
		}
	}
	return true
}

// How proven drinks near the readable part of a draft tell what the rest may be; common
// practice, no source.
const (
	relatives = 60  // drinks that are asked
	sizeRange = 2.5 // how many times more or less of it they may pour
)

// Beside returns up to n ingredients that the proven drinks nearest to a part of a draft
// pour beside what it holds, each drink counting by its nearness. If ml is above 0, only
// pours of about so many millilitres count. What the part holds already is left out, and
// so is what comes from the tap, and what holds alcohol if the part is without.
func (k *Kitchen) Beside(part *flavor.Spec, ml float64, n int) ([]*flavor.Profile, error) {
	near, err := k.Station.Relatives(part, relatives, guest.Guest{})
	if err != nil {
		return nil, err
	}
	may := guest.Guest{NoAlcohol: part.AlcoholFree()}
	poured := map[*flavor.Profile]float64{}
	for i := range near {
		weight := 1 / (1 + near[i].Distance*near[i].Distance)
		for j := range near[i].Proven.Spec.Pours {
			p := &near[i].Proven.Spec.Pours[j]
			sized := ml <= 0 || p.ML <= ml*sizeRange && p.ML >= ml/sizeRange
			if sized && !p.Profile.Class.Free() && may.MayHave(p.Profile) && !part.HasProfile(p.Profile) {
				poured[p.Profile] += weight
			}
		}
	}
	out := slices.SortedFunc(maps.Keys(poured), func(a, b *flavor.Profile) int {
		return cmp.Or(cmp.Compare(poured[b], poured[a]), strings.Compare(a.ID, b.ID))
	})
	return out[:min(n, len(out))], nil
}

// UsualML returns the middle one of the amounts, in mL, that proven drinks pour of an
// ingredient; 0 if none pours it.
func (k *Kitchen) UsualML(p *flavor.Profile) float64 {
	var amounts []float64
	for i := range k.Proven {
		for j := range k.Proven[i].Spec.Pours {
			if x := &k.Proven[i].Spec.Pours[j]; x.Profile.ID == p.ID {
				amounts = append(amounts, x.ML)
			}
		}
	}
	if len(amounts) == 0 {
		return 0
	}
	slices.Sort(amounts)
	return amounts[len(amounts)/2]
}
