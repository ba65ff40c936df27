package service

import (
	"context"
	"errors"
	"fmt"

	"counterpour/api/service/fault"
	"counterpour/api/service/records"
	"counterpour/data/house"
	"counterpour/flavor"
)

// TasteRequest notes how a cover was received. Exactly one of Verdict and Score is set.
type TasteRequest struct {
	Served    Draft           // as poured, under the name of the spec that it stood in for
	Missing   string          // what had run out: name, alias or id
	Reception house.Reception // kept or sent back; empty if there is a score
	Score     *float64        // 0 to records.MostScore; nil if not scored
}

// reception validates how the cover was received.
func (r *TasteRequest) reception() (house.Reception, error) {
	switch {
	case (r.Reception == "") == (r.Score == nil):
		return "", flavor.Invalid("verdict", "", "say how it was received: give one of kept, sent back or a score of 0 to %d", records.MostScore)
	case r.Score == nil && r.Reception != house.ReceptionKept && r.Reception != house.ReceptionSentBack:
		return "", flavor.Invalid("verdict", string(r.Reception), "%q is no verdict; use kept or sent back", fault.Quotable(string(r.Reception)))
	case r.Score == nil:
		return r.Reception, nil
	case !(*r.Score >= 0 && *r.Score <= records.MostScore):
		return "", flavor.Invalid("score", *r.Score, "%v is out of range; give 0 to %d", *r.Score, records.MostScore)
	}
	return house.ReceptionUnknown, nil
}

// Taste records how a cover was received, so that later searches learn from it.
func (v *Venue) Taste(ctx context.Context, by house.By, r TasteRequest) error {
	now := v.Now()
	reception, err := r.reception()
	if err != nil {
		return err
	}
	if r.Missing == "" {
		return flavor.Invalid("missing", "", "name the ingredient that had run out")
	}
	served, err := now.Read(r.Served)
	if err != nil {
		return err
	}
	if served.Name == "" {
		return flavor.Invalid("", "", "the drink has no name; write the name of the spec it stood in for on the first line")
	}
	missing, err := now.Named(r.Missing)
	if err != nil {
		return fault.At("missing", err)
	}
	id := house.IDOf(house.KindSpec, served.Name)
	spec, err := house.Get[house.Spec](ctx, v.inner, id)
	if errors.Is(err, house.ErrNotFound) {
		return &flavor.DataFault{Kind: flavor.ErrUnknown, Value: served.Name,
			Message: fmt.Sprintf("the house has no spec %q; write the name of the one it stood in for on the first line", served.Name)}
	}
	if err != nil {
		return err
	}
	c := house.ServedCover{At: by.At, Spec: id, SpecVersion: spec.Version, Missing: missing.ID,
		Served: house.FromSpec(id, served).Pours, Taster: by.Actor, Reception: reception, Score: r.Score}
	_, err = v.Store().Write(ctx, by, house.Put(c, 0))
	return err
}
