// Package records reads what of a house's store a snapshot depends on, and after a
// change no more than the kinds that it touched.
package records

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"

	"counterpour/data/house"
)

// kinds are the kinds that a snapshot depends on.
var kinds = []house.Kind{house.KindBottle, house.KindMade, house.KindSpec, house.KindOut, house.KindCover, house.KindRight, house.KindName, house.KindSettings}

// ChangesAtOnce is how many changes are asked for at a time.
const ChangesAtOnce = 256

// Records are what of a store a snapshot depends on. They are never changed.
type Records struct {
	Bottles []house.Kept[house.Bottle]
	Made    []house.Kept[house.Made]
	Specs   []house.Kept[house.Spec]
	Outs    []house.Out
	Covers  []house.Cover
	Rights  []house.Right
	Names   []house.Kept[house.Name]
	Setup   house.Settings
	UpTo    int64        // all changes up to this one are in them
	Anew    []house.Kind // of them, those that were read anew; the rest is as it was before
}

// Read reads what a store has. Of what was read before, if anything was, only the
// kinds that changed since are read again, so that a mark costs the same in a house
// of a hundred drinks and of a hundred thousand.
func Read(ctx context.Context, s house.Reader, before *Records) (*Records, error) {
	if before != nil {
		since, err := s.Changes(ctx, before.UpTo, ChangesAtOnce)
		if err != nil {
			return nil, err
		}
		if len(since) < ChangesAtOnce {
			return before.readAnew(ctx, s, since)
		}
	}
	r := &Records{Anew: kinds}
	list, err := s.List(ctx, kinds...)
	for _, e := range list {
		r.UpTo = max(r.UpTo, e.Seq)
	}
	r.take(list)
	return r, err
}

// readAnew reads the kinds that some changes touch again; or all of them if something
// was written meanwhile, so that what it returns was there at one moment.
func (r *Records) readAnew(ctx context.Context, s house.Reader, since []house.Change) (*Records, error) {
	out := *r
	out.Anew = nil
	for _, c := range since {
		out.UpTo = c.Seq
		if slices.Contains(kinds, c.Ref.Kind) && !out.IsAnew(c.Ref.Kind) {
			out.Anew = append(out.Anew, c.Ref.Kind)
		}
	}
	if len(out.Anew) == 0 {
		return &out, nil
	}
	for _, k := range out.Anew {
		out.drop(k)
	}
	list, err := s.List(ctx, out.Anew...)
	if err == nil && slices.ContainsFunc(list, func(e house.Entry) bool { return e.Seq > out.UpTo }) {
		return Read(ctx, s, nil)
	}
	out.take(list)
	return &out, err
}

// IsAnew reports whether one of some kinds was read anew.
func (r *Records) IsAnew(some ...house.Kind) bool {
	return slices.ContainsFunc(some, func(k house.Kind) bool { return slices.Contains(r.Anew, k) })
}

func (r *Records) drop(k house.Kind) {
	switch k {
	case house.KindBottle:
		r.Bottles = nil
	case house.KindMade:
		r.Made = nil
	case house.KindSpec:
		r.Specs = nil
	case house.KindOut:
		r.Outs = nil
	case house.KindCover:
		r.Covers = nil
	case house.KindRight:
		r.Rights = nil
	case house.KindName:
		r.Names = nil
	case house.KindSettings:
		r.Setup = house.Settings{}
	}
}

func (r *Records) take(list []house.Entry) {
	for _, e := range list {
		switch item := e.Item.(type) {
		case house.Bottle:
			r.Bottles = append(r.Bottles, house.Kept[house.Bottle]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Made:
			r.Made = append(r.Made, house.Kept[house.Made]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Spec:
			r.Specs = append(r.Specs, house.Kept[house.Spec]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Out:
			r.Outs = append(r.Outs, item)
		case house.Cover:
			r.Covers = append(r.Covers, item)
		case house.Right:
			r.Rights = append(r.Rights, item)
		case house.Settings:
			r.Setup = item
		case house.Name:
			r.Names = append(r.Names, house.Kept[house.Name]{Item: item, Version: e.Version, Seq: e.Seq})
		}
	}
}

// Version names the bottles and makings that the shelf and the index were made
// from: the same records in the same versions give the same one.
type Version string

// Version digests what the shelf depends on.
func (r *Records) Version() Version {
	h := sha256.New()
	for _, b := range r.Bottles {
		fmt.Fprintln(h, b.Item.Ref(), b.Version)
	}
	for _, m := range r.Made {
		fmt.Fprintln(h, m.Item.Ref(), m.Version)
	}
	for _, n := range r.Names {
		fmt.Fprintln(h, n.Item.Ref(), n.Version)
	}
	return Version(hex.EncodeToString(h.Sum(nil)[:8]))
}
