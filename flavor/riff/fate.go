package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// fate is what becomes of a solved draft.
type fate int

const (
	fateGood  fate = iota // balanced, and keeps to everything asked
	fateOff               // not balanced
	fateLimit             // breaks a limit
	fateUnmet             // does not meet every wish
	fateAlike             // too near to the drink asked about
)

// fate judges a solved draft, and counts it if it is left out.
func (w *work) fate(s *solved) (fate, error) {
	iced, err := w.hotOnIce(s)
	switch {
	case err != nil:
		return fateOff, err
	case s.score < template.BalancedFrom || iced:
		w.left.Off++
		return fateOff, nil
	case !w.limits.kept(&s.spec, s.drink):
		w.left.ByLimit++
		return fateLimit, nil
	case s.short > 0:
		w.left.Unmet++
		return fateUnmet, nil
	case w.spec != nil && s.at.distance(&w.at) < LeastDistance:
		w.left.TooAlike++
		return fateAlike, nil
	}
	return fateGood, nil
}

// hotFamily is the family of drinks that are served hot.
const hotFamily = "hot"

// hotOnIce reports whether a draft is balanced as a hot drink, but served on
// ice: what a spirit needs beside hot coffee says nothing of cold.
func (w *work) hotOnIce(s *solved) (bool, error) {
	teaLike := func(p flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinTea }
	if s.spec.Service == flavor.Up || !slices.ContainsFunc(s.spec.Pours, teaLike) {
		return false, nil
	}
	r, err := w.riffer.judge.Score(&s.spec)
	if err != nil {
		return false, err
	}
	return r.Judgement.Fits[0].ID == hotFamily, nil
}
