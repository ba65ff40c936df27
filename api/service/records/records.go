// Package records reads the records of a house from which a snapshot is derived. After a
// change it reads only the kinds of records that changed.
package records

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"

	"counterpour/data/house"
)

// kinds are the kinds of records that a snapshot depends on.
var kinds = []house.Kind{house.KindBottle, house.KindMade, house.KindSpec, house.KindOut, house.KindCover, house.KindRight, house.KindName, house.KindSettings}

// ChangesAtOnce is how many changes are read at a time.
const ChangesAtOnce = 256

// Records are the records that a snapshot depends on. They are immutable.
type Records struct {
	Bottles []house.Kept[house.Bottle]
	Made    []house.Kept[house.Made]
	Specs   []house.Kept[house.Spec]
	Outs    []house.Out
	Covers  []house.ServedCover
	Rights  []house.Right
	Names   []house.Kept[house.Name]
	Setup   house.Settings
	UpTo    int64        // sequence number of the last change that they include
	Anew    []house.Kind // the kinds that the last [Read] read again
}

// Read reads the records of a store. If before is not nil, only the kinds that have
// changed since are read again, so that a mark costs the same in a house of a hundred
// drinks and of a hundred thousand.
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

// readAnew reads again the kinds that the changes touch. If another write happened
// meanwhile, it reads everything in one List, so that the records are consistent.
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

// IsAnew reports whether one of these kinds was read again.
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
			r.Bottles = append(r.Bottles, keptOf(item, e))
		case house.Made:
			r.Made = append(r.Made, keptOf(item, e))
		case house.Spec:
			r.Specs = append(r.Specs, keptOf(item, e))
		case house.Out:
			r.Outs = append(r.Outs, item)
		case house.ServedCover:
			r.Covers = append(r.Covers, item)
		case house.Right:
			r.Rights = append(r.Rights, item)
		case house.Settings:
			r.Setup = item
		case house.Name:
			r.Names = append(r.Names, keptOf(item, e))
		}
	}
}

func keptOf[T house.Item](item T, e house.Entry) house.Kept[T] {
	return house.Kept[T]{Item: item, Version: e.Version, Seq: e.Seq}
}

// Version is a hash of the records from which the shelf and the index are made. Equal
// records in equal versions have the same one.
type Version string

// Version hashes the records that the shelf depends on.
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
