package place

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

// Demo is where the invented house lives: in memory, until the program ends.
const Demo = ""

// Place is where a house is kept, and what it is opened for.
type Place struct {
	Where string
	Why   Purpose
	Made  bool // set if there was no house and opening made one
	Later bool // set if a later version wrote it, so that it is only read

	Over func(house.Store) house.Store // what is laid over the store; nil is nothing
}

// AtHouse opens a kitchen and the house it works for, to be read; done closes
// both. The demo house, which is in memory, can be written to as well.
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

// SnapshotOf opens a house, or the demo, as it stands; a house that cannot be
// used in full is an error.
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

// Enter opens the house that a kitchen works for, and leaves the kitchen open.
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
			_ = s.Close() // the error at hand says more
		}
		return nil, nil, err
	}
	return v, func() { v.Close(); _ = s.Close() }, nil // every write is durable already
}

// open opens the house of a place. What a later version wrote is still served, to be
// read.
func (at *Place) open(ctx context.Context) (s house.Store, err error) {
	s, at.Made, err = OpenHouse(ctx, at.Where, at.Why)
	if at.Why == ToServe && errors.Is(err, house.ErrNewer) {
		s, _, err = OpenHouse(ctx, at.Where, ToRead)
		at.Later = err == nil
	}
	return s, err
}

// demoStore keeps the demo house in memory.
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

// NameOf is what a house is called: by its file, never by the address of a
// database, which may hold a password.
func NameOf(where string) string {
	if IsDatabase(where) {
		return "the house"
	}
	base := filepath.Base(where)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// IsDatabase reports whether a place is the address of a PostgreSQL database, and not a file.
func IsDatabase(where string) bool {
	return strings.HasPrefix(where, "postgres://") || strings.HasPrefix(where, "postgresql://")
}

// Whole returns what of a house cannot be used as one error, nil if all can.
func Whole(v *service.Venue) error { return errors.Join(v.Now().Faults...) }

// AtOwnHouse is [Open] for what makes no sense with the demo.
func AtOwnHouse(ctx context.Context, open Kitchens, at *Place) (*service.Venue, func(), error) {
	if at.Where == Demo {
		return nil, nil, ErrNoHouse
	}
	return Open(ctx, open, at)
}

// Kitchens opens the kitchen that a command works with; done closes it.
type Kitchens func(ctx context.Context) (k *kitchen.Kitchen, done func(), err error)
