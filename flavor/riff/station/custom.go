package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/wording"
)

// How much a custom of the trade counts, 0 to 1: the first choice in whole, each later one
// by so much less, and the last still by some. Common practice, no source.
const (
	laterCustom = 0.08
	leastCustom = 0.3
)

// Customary is how far an ingredient is what the trade pours in place of another, 0 to 1:
// by the table that covers go by, the order of which counts among what may be poured. For a
// guest who drinks no alcohol, or where less strength is asked for, what the trade pours
// then in place of a spirit comes before that.
func (j *Job) Customary(p, old *flavor.Profile) float64 {
	if p.ID == old.ID {
		return 0
	}
	return max(j.placed(p.ID, j.lighterOf(old)), j.placed(p.ID, j.customsOf(old)), j.counterpart(p, old))
}

// customsOf lists what the trade pours alone in place of an ingredient, the first choice
// first.
func (j *Job) customsOf(old *flavor.Profile) (ids []string) {
	for _, c := range j.Station.customs.For(old.ID) {
		if len(c.Parts) == 1 {
			ids = append(ids, c.Parts[0])
		}
	}
	return ids
}

// lighterOf lists what the trade pours in place of a spirit for a guest who drinks no
// alcohol, or who wants less of it, the first choice first; nil for who wants neither.
func (j *Job) lighterOf(old *flavor.Profile) []string {
	switch {
	case !old.Base():
		return nil
	case j.Limits.Guest.NoAlcohol:
		return j.Station.customs.Dry(old.Class)
	case j.Limits.Lighter():
		return j.Station.customs.Lighter(old.Class)
	}
	return nil
}

// counterpart is how far a bottle without alcohol is what the trade pours, for a guest who
// drinks none, in place of a modifier, 0 to 1.
func (j *Job) counterpart(p, old *flavor.Profile) float64 {
	if !j.Limits.Guest.NoAlcohol || old.Base() || p.StandsForABV() <= 0 {
		return 0
	}
	return j.placed(p.ID, j.Station.customs.Dry(old.Class))
}

// placed is what an id counts by its place among those of a list that may be poured.
func (j *Job) placed(id string, ids []string) float64 {
	place := 0
	for _, x := range ids {
		if x == id {
			return max(leastCustom, 1-laterCustom*float64(place))
		}
		if i, there := j.byID[x]; there && i >= 0 {
			place++
		}
	}
	return 0
}

// customary is how far a drink pours what the trade does in place of what of the drink
// asked about may not be poured, 0 to 1 on the mean of those pours; 0 if all may be.
func (j *Job) customary(s *flavor.Spec) float64 {
	var sum, gone float64
	for i := range j.From.Pours {
		old := j.From.Pours[i].Profile
		if _, there := j.Has(old); there {
			continue
		}
		gone++
		sum += j.inPlaceOf(s, old)
	}
	return sum / max(1, gone)
}

// StandsMore reports whether more of what a drink pours already is what the trade pours in
// place of a spirit where less alcohol is asked for, as more soda is.
func (j *Job) StandsMore(p, old *flavor.Profile) bool { return j.placed(p.ID, j.lighterOf(old)) > 0 }

// inPlaceOf is how far what came into a drink, or is poured more, is what the trade pours in
// place of an ingredient, 0 to 1: without its spirit a long drink has more of its soda.
func (j *Job) inPlaceOf(s *flavor.Spec, old *flavor.Profile) (most float64) {
	made := func(p *flavor.Profile) bool { return p.Base() && p.StandsForABV() > 0 }
	spirit := old.Base() && s.Has(made)
	for i := range s.Pours {
		x := &s.Pours[i]
		switch {
		case spirit && !made(x.Profile): // soda beside it stands for no spirit any more
		case !j.From.HasProfile(x.Profile):
			most = max(most, j.Customary(x.Profile, old))
		case x.ML > j.given(x.Profile)+wording.SameML && j.StandsMore(x.Profile, old):
			most = 1 // nothing else needs to come in
		}
	}
	return most
}

// standsIn reports whether one of two ingredients keeps the company that a pour of the drink
// asked about kept, since the trade pours it in the place of that: where the pour may not be
// poured, or what is lighter is asked for. What curdles keeps its own.
func (j *Job) standsIn(a, b *flavor.Profile) bool {
	if j.From == nil || a.Class.Curdles() || b.Class.Curdles() {
		return false
	}
	return j.From.HasProfile(b) && j.takesAPlace(a) || j.From.HasProfile(a) && j.takesAPlace(b)
}

func (j *Job) takesAPlace(p *flavor.Profile) bool {
	return !j.From.HasProfile(p) && slices.ContainsFunc(j.From.Pours, func(x flavor.Pour) bool {
		_, there := j.Has(x.Profile)
		if there {
			return j.placed(p.ID, j.lighterOf(x.Profile)) > 0
		}
		return j.Customary(p, x.Profile) > 0
	})
}
