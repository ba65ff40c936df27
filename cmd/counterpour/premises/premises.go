package premises

import (
	"context"
	"errors"
	"log/slog"
	"path/filepath"
	"strings"
	"time"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/data/house"
	"counterpour/data/house/store"
)

// Demo is the location of the demo house, which is in memory.
const Demo = ""

// Place is where a house is stored, and what it is opened for.
type Place struct {
	Where string
	Why   Purpose
	Made  bool // set if opening created the house
	Later bool // set if a later version wrote it; then it is read only

	Over func(house.Store) house.Store // wraps the store; nil for none
}

// AtHouse opens a kitchen and its house for reading; done closes both. The demo house,
// which is in memory, can also be written to.
func AtHouse(ctx context.Context, open Kitchens, where string) (v *service.Venue, done func(), err error) {
	return Open(ctx, open, &Place{Where: where})
}

// Open opens a kitchen and a house for any purpose; done closes both.
func Open(ctx context.Context, open Kitchens, at *Place) (v *service.Venue, done func(), err error) {
	k, shut, err := open(ctx)
	if err != nil {
		return nil, nil, err
	}
	v, leave, err := Enter(ctx, k, at, nil)
	if err != nil {
		shut()
		return nil, nil, err
	}
	return v, func() { leave(); shut() }, nil
}

// SnapshotOf opens a house, or the demo, and returns its snapshot. It fails if some
// record of the house cannot be used.
func SnapshotOf(ctx context.Context, open Kitchens, where string) (*service.Snapshot, func(), error) {
	v, done, err := AtHouse(ctx, open, where)
	if err != nil {
		return nil, nil, err
	}
	if err := Whole(v); err != nil {
		done()
		return nil, nil, err
	}
	return v.Now(), done, nil
}

// SnapshotOrNone opens a house as it stands, and none if no place is given: for what is
// asked of the catalogue, and of a house only if somebody names theirs.
func SnapshotOrNone(ctx context.Context, open Kitchens, where string) (*service.Snapshot, func(), error) {
	if where != "" {
		return SnapshotOf(ctx, open, where)
	}
	k, done, err := open(ctx)
	if err != nil {
		return nil, nil, err
	}
	return service.AtRest(k, &data.House{}), done, nil
}

// Enter opens the house of a kitchen; closing it leaves the kitchen open.
func Enter(ctx context.Context, k *kitchen.Kitchen, at *Place, log *slog.Logger) (v *service.Venue, leave func(), err error) {
	var s house.Store
	about := service.About{Name: NameOf(at.Where)}
	if at.Where == Demo {
		s, about, err = demoStore(ctx, k)
	} else {
		s, err = at.open(ctx)
	}
	if err == nil && at.Later && log != nil {
		log.Warn("a later version of this program wrote the house; it is open for reading only, and nothing is saved: use the later version")
	}
	if err == nil {
		top := s
		if at.Over != nil {
			top = at.Over(s)
		}
		v, err = service.Open(ctx, k, top, about, log)
	}
	if err != nil {
		if s != nil {
			_ = s.Close() // the first error matters more
		}
		return nil, nil, err
	}
	return v, func() { v.Close(); _ = s.Close() }, nil // every write is durable already
}

// open opens the house of a place. A house that a later version wrote is opened read only
// if it is to be served.
func (at *Place) open(ctx context.Context) (s house.Store, err error) {
	s, at.Made, err = OpenHouse(ctx, at.Where, at.Why)
	if at.Why == ToServe && errors.Is(err, house.ErrNewer) {
		s, _, err = OpenHouse(ctx, at.Where, ToRead)
		at.Later = err == nil
	}
	return s, err
}

// demoStore creates the demo house in memory.
func demoStore(ctx context.Context, k *kitchen.Kitchen) (s house.Store, about service.About, err error) {
	h, err := k.Catalogue.Demo()
	if err != nil {
		return nil, about, err
	}
	if s, err = store.OpenMemory(ctx); err == nil {
		err = service.Fill(ctx, s, h, time.Now())
	}
	return s, service.About{Name: h.Name, Description: h.Description, Invented: h.Invented}, err
}

// NameOf returns a name for a house: that of its file, but never the address of a
// database, which may contain a password.
func NameOf(where string) string {
	if IsDatabase(where) {
		return "the house"
	}
	base := filepath.Base(where)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// IsDatabase reports whether a place is the address of a PostgreSQL database and not a
// file.
func IsDatabase(where string) bool {
	return strings.HasPrefix(where, "postgres://") || strings.HasPrefix(where, "postgresql://")
}

// Whole returns an error that joins the faults of all unusable records; nil if there are
// none.
func Whole(v *service.Venue) error { return errors.Join(v.Now().Faults...) }

// AtOwnHouse is like [Open], but refuses the demo.
func AtOwnHouse(ctx context.Context, open Kitchens, at *Place) (*service.Venue, func(), error) {
	if at.Where == Demo {
		return nil, nil, ErrNoHouse
	}
	return Open(ctx, open, at)
}

// Kitchens opens the kitchen for a command; done closes it.
type Kitchens func(ctx context.Context) (k *kitchen.Kitchen, done func(), err error)
