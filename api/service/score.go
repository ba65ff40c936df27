package service

import (
	"context"
	"slices"

	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// ScoreRequest asks for a draft to be scored.
type ScoreRequest struct {
	Draft
	Explain bool // include the calculation, line by line
	Partial bool // score the lines of a text that can be read, even if others cannot
}

// ScoreAnswer is a scored draft.
type ScoreAnswer struct {
	Spec     flavor.Spec // as read
	Result   *balance.Result
	Fixes    []balance.Fix     // best first
	Steps    []arithmetic.Step // the calculation, if asked for
	Glass    string            // how far it fills the usual glasses
	Sensed   *sense.Percept    // sensory properties of the drink
	Cautions []data.Caution

	// Incomplete lists the lines that could not be read, for a Partial request. The drink
	// is then not the intended one: Fixes is empty, and an allergen that is not listed
	// may still be in the drink.
	Incomplete flavor.DataFaults
}

// Score reads and scores a draft. Its faults are those of [Snapshot.Read].
func (s *Snapshot) Score(ctx context.Context, r ScoreRequest) (*ScoreAnswer, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	spec, missed, err := s.readFor(&r)
	if err != nil {
		return nil, err
	}
	a := &ScoreAnswer{Spec: spec, Incomplete: missed}
	if a.Result, a.Fixes, err = s.Mend(&spec); err != nil {
		return nil, err
	}
	if len(missed) > 0 {
		a.Fixes = nil
	}
	a.Sensed = s.Catalogue.Space().Percept(&spec, a.Result.Drink)
	a.Cautions = slices.Concat(kitchen.StrengthCautions(a.Result.Drink), s.AllCautions(&spec))
	if a.Glass, err = mix.FillText(a.Result.Drink.VolumeML, mix.Standing(&spec), mix.GlassesOf(&spec)...); err != nil {
		return nil, err
	}
	if r.Explain {
		a.Steps, err = s.Judge.Explain(&spec)
	}
	return a, err
}

// readFor reads the draft of a request. For a Partial request it also returns the faults
// of the lines that could not be read.
func (s *Snapshot) readFor(r *ScoreRequest) (flavor.Spec, flavor.DataFaults, error) {
	if !r.Partial || r.Text == nil {
		spec, err := s.Read(r.Draft)
		return spec, nil, err
	}
	rest, err := s.ReadRest(*r.Text)
	return rest.Spec, rest.Faults, err
}
