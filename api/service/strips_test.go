package service

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/ratio"
)

// What is right to say of a spoilt drink is what its score and the glass say: a fault that the
// score names and the glass bears out is right, and what is right beside the slip and its other
// side lies out of its range by more than its ±, is named by the score, has plainly moved in
// the glass, or has moved there while what hides it went the other way: with less sugar and
// more coffee, what is left is bitter.
func TestRangesMatchTheGradedAnswers(t *testing.T) {
	k := testKitchen(t)
	trainer, err := (&Snapshot{Kitchen: k, Stock: k.Catalogue.Profiles()}).newSchool()()
	require.NoError(t, err)
	type side struct {
		axis ratio.Axis
		high bool
	}
	other := map[ratio.Axis]ratio.Axis{ratio.Sweet: ratio.Sour, ratio.Sour: ratio.Sweet, ratio.Strong: ratio.Long, ratio.Long: ratio.Strong, ratio.Bitter: ratio.Bitter}
	hides := map[ratio.Axis][]ratio.Axis{ratio.Strong: {ratio.Long}, ratio.Sweet: {ratio.Sour, ratio.Bitter}, ratio.Sour: {ratio.Sweet}, ratio.Bitter: {ratio.Sweet}, ratio.Long: {ratio.Strong}}
	for seed := range uint64(4) {
		for _, a := range ratio.Axes() {
			r, err := trainer.Round(drill.RoundRequest{Kind: drill.KindFault, Axis: a, Size: 6, Seed: seed})
			require.NoError(t, err)
			judged, err := k.Judge.Score(&r.Specs[0])
			require.NoError(t, err)
			ranges, ok := k.Ranges(&r.Specs[0], judged.Judgement.Fits[0].ID)
			require.True(t, ok)
			proper, err := k.Mixer.Mix(r.Drinks()[0])
			require.NoError(t, err)
			moved := func(s side) float64 { // noticeable steps in the glass, to the side
				was, is := tasting.Value(s.axis, proper), tasting.Value(s.axis, judged.Drink)
				if steps := tasting.JND(s.axis, was, is); s.high == (is > was) {
					return steps
				}
				return 0
			}
			right, named := map[side]bool{}, map[side]bool{}
			for _, f := range judged.Faults {
				named[side{f.Axis, f.High}] = f.Method == ""
			}
			for _, x := range drill.Sayings() {
				g, err := trainer.Grade(r, drill.Answer{Axis: x.Axis, High: x.High})
				require.NoError(t, err)
				right[side{x.Axis, x.High}] = g.Right
			}
			broughtOut := func(s side) bool {
				return moved(s) >= 0.5 && slices.ContainsFunc(hides[s.axis], func(by ratio.Axis) bool { return right[side{by, !s.high}] })
			}
			for _, x := range drill.Sayings() {
				s, ml, of := side{x.Axis, x.High}, judged.Judgement.Equivalents[x.Axis], ranges[x.Axis]
				out := x.High && ml-of.PlusMinus > of.High || !x.High && of.Has && ml+of.PlusMinus < of.Low
				slip := x.Axis == a || other[x.Axis] == a || a == ratio.Strong && (x.Axis == ratio.Sweet || x.Axis == ratio.Sour) // drowned, or not carried
				if right[s] {
					assert.True(t, slip || named[s] || out || moved(s) >= 2 || broughtOut(s), "%s: seed %d, %s is right", r.Question, seed, x.Plain)
				}
				if named[s] && moved(s) >= 1 && !right[side{x.Axis, !x.High}] {
					assert.True(t, right[s], "%s: seed %d, %s is named by the score", r.Question, seed, x.Plain)
				}
			}
		}
	}
}
