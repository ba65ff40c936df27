package service

import (
	"context"
	"errors"
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
)

// TasteRequest notes how a cover was received.
type TasteRequest struct {
	Served  Draft  // as it was poured, under the name of the spec it stood in for
	Missing string // what had run out: name, alias or id
	Verdict house.Verdict
	Score   *float64 // 0 to MostScore; nil if nobody gave one
	Taster  string
}

// Taste notes how a cover was received, so that the next search knows.
func (v *Venue) Taste(ctx context.Context, by house.By, r TasteRequest) error {
	now := v.Now()
	if r.Score != nil && !(*r.Score >= 0 && *r.Score <= MostScore) {
		return flavor.Invalid("score", *r.Score, "%v is out of range; give 0 to %d", *r.Score, MostScore)
	}
	served, err := now.Read(r.Served)
	if err != nil {
		return err
	}
	if served.Name == "" {
		return flavor.Invalid("", "", "the drink has no name; write the name of the spec it stood in for on the first line")
	}
	missing, _, err := now.Index.Resolve(r.Missing)
	if err != nil {
		return at("missing", err)
	}
	id := house.IDOf(house.KindSpec, served.Name)
	spec, err := house.Get[house.Spec](ctx, v.inner, id)
	if errors.Is(err, house.ErrNotFound) {
		return &flavor.Fault{Kind: flavor.ErrUnknown, Value: served.Name,
			Message: fmt.Sprintf("the house has no spec %q; write the name of the one it stood in for on the first line", served.Name)}
	}
	if err != nil {
		return err
	}
	c := house.Cover{At: by.At, Spec: id, SpecVersion: spec.Version, Missing: missing.ID,
		Served: house.FromSpec(id, served).Pours, Taster: r.Taster, Verdict: r.Verdict, Score: r.Score}
	_, err = v.Store().Write(ctx, by, house.Put(c, 0))
	return err
}
