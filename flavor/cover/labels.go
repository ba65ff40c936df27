package cover

import (
	"context"
	"slices"

	"counterpour/flavor"
)

// addLabels adds what is safe only if a label clears it, and leaving out what went where
// nothing is safe.
func (f *Finder) addLabels(ctx context.Context, r *Request, to *Result) error {
	if !r.Guest.HeedsLabels() {
		return nil
	}
	unsure, err := f.covers(ctx, r, true)
	if err != nil {
		return err
	}
	to.labels = unsure.strayed
	to.LabelFirst = len(unsure.Covers) > 0 && len(unsure.Covers[0].Read) > 0
	if c := unsure.LeftOut; c != nil && len(c.Read) > 0 && len(to.Covers) == 0 && to.LeftOut == nil {
		at := len(unsure.Covers)
		if unsure.LeftOutBest {
			at = 0
		}
		unsure.Covers = slices.Insert(unsure.Covers, at, *c)
		to.LabelFirst = true
	}
	for _, c := range unsure.Covers {
		if len(c.Read) > 0 {
			to.IfLabelClears = append(to.IfLabelClears, c)
		}
	}
	if to.strayed > unsure.strayed && len(to.IfLabelClears) > 0 && !r.Guest.NoAlcohol && !slices.ContainsFunc(to.Covers, Cover.worthPouring) {
		to.Covers = slices.DeleteFunc(to.Covers, func(c Cover) bool { return !c.Keeps && c.Distance > strangeJND })
		to.LabelFirst = true
		if len(to.Covers) == 0 {
			to.Unbalanced, to.Near = false, to.LeftOut != nil && to.LeftOut.Keeps
		}
	}
	to.LabelsLead = to.labelsLead()
	to.LabelFirst = to.LabelFirst || to.LabelsLead
	if to.LabelsLead && to.IfLabelClears[0].Keeps && len(to.Covers) > 0 && to.LeftOut != nil && !to.LeftOut.Keeps {
		to.LeftOut = nil // another drink, where one keeps it and others are safe
	}
	to.Proven = to.Proven && unsure.Proven
	return nil
}

// labelsLead reports whether what waits for a label is to be poured before what is safe without:
// plain aquafaba for the egg white, if the label of the bitters names no eggs, before aquafaba
// and something else in place of the bitters.
func (r *Result) labelsLead() bool {
	keeps := func(c Cover) bool { return c.Keeps }
	if len(r.IfLabelClears) == 0 || r.LeftOutBest {
		return false
	}
	first := &r.IfLabelClears[0]
	if !slices.ContainsFunc(r.Covers, keeps) {
		return r.LabelFirst || first.Keeps
	}
	ordered := func(p *flavor.Profile) bool { return slices.Contains(r.Unstated, p) }
	return first.Keeps && !slices.ContainsFunc(first.Read, func(p *flavor.Profile) bool { return !ordered(p) })
}

// strangeJND is how far a safe cover may move a drink, in just-noticeable differences, that stands
// beside one which keeps it once a label is read: who cannot read a label still pours something.
// Judged.
const strangeJND = 5.0
