package service

import (
	"context"
	"slices"

	"counterpour/api/service/kitchen"
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
	Partial bool // of a text, score what can be read of it while other lines cannot
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

	// Incomplete is what could not be read, where a part was asked for. The drink is
	// then not the one that was meant: nothing is said of how to mend it, and what it
	// holds beside says nothing of what it lacks.
	Incomplete flavor.Faults
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
	a.Sensed = s.Catalogue.Space().Glass(&spec, a.Result.Drink)
	a.Cautions = slices.Concat(kitchen.StrengthCautions(a.Result.Drink), s.AllCautions(&spec))
	if a.Glass, err = mix.FillText(a.Result.Drink.VolumeML, mix.Standing(&spec), mix.GlassesOf(&spec)...); err != nil {
		return nil, err
	}
	if r.Explain {
		a.Steps, err = s.Judge.Explain(&spec)
	}
	return a, err
}

// readFor reads the draft of a request, and what of it could not be read where a
// part will do.
func (s *Snapshot) readFor(r *ScoreRequest) (flavor.Spec, flavor.Faults, error) {
	if !r.Partial || r.Text == nil {
		spec, err := s.Read(r.Draft)
		return spec, nil, err
	}
	return s.ReadRest(*r.Text)
}

// ReadRest reads what can be read of a text, and what cannot. It fails as Read
// does where nothing that was read can be weighed.
func (s *Snapshot) ReadRest(text string) (flavor.Spec, flavor.Faults, error) {
	part, missed, err := s.ReadPart(text)
	if err != nil {
		return flavor.Spec{}, nil, err
	}
	if len(missed) == 0 {
		spec, err := s.Read(Draft{Text: &text})
		return spec, nil, err
	}
	if spec, err := s.Read(Draft{Spec: &part}); err == nil {
		return spec, missed, nil
	}
	return flavor.Spec{}, nil, missed // nothing that was read can be weighed
}
