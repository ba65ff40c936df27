package service

import (
	"context"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// ScoreRequest asks for a draft to be scored.
type ScoreRequest struct {
	Draft
	Explain bool // also give the arithmetic, line by line
}

// ScoreAnswer is a draft scored.
type ScoreAnswer struct {
	Spec     flavor.Spec // as it was read
	Result   *balance.Result
	Fixes    []balance.Fix  // what would mend it, the best first
	Steps    []balance.Step // the arithmetic, if it was asked for
	Glass    string         // how full it makes the usual glasses
	Sensed   *sense.Glass   // what is in it for every sense
	Cautions []data.Caution
}

// Score reads and scores a draft. Its faults are those of [Snapshot.Read].
func (s *Snapshot) Score(ctx context.Context, r ScoreRequest) (*ScoreAnswer, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	spec, err := s.Read(r.Draft)
	if err != nil {
		return nil, err
	}
	a := &ScoreAnswer{Spec: spec}
	if a.Result, a.Fixes, err = s.Mend(&spec); err != nil {
		return nil, err
	}
	a.Sensed = s.Catalogue.Space().Glass(&spec, a.Result.Drink)
	a.Cautions = s.AllCautions(a.Result.Drink.After.Ethanol > 0, &spec)
	if a.Glass, err = mix.FillText(a.Result.Drink.VolumeML, spec.Service, glassesFor(spec.Service)...); err != nil {
		return nil, err
	}
	if r.Explain {
		a.Steps, err = s.Judge.Explain(&spec)
	}
	return a, err
}

// Mend scores a spec and finds how to fix it.
func (k *Kitchen) Mend(spec *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	r, err := k.Judge.Score(spec)
	if err != nil {
		return nil, nil, err
	}
	fixes, err := k.Judge.Fixes(spec, r, balance.MaxFixes)
	return r, fixes, err
}
