package main

import (
	"context"
	"errors"
	"log/slog"
	"path/filepath"
	"strings"
	"time"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/data/house/store"
)

// demoHouse is where the invented house lives: in memory, until the program ends.
const demoHouse = ""

// place is where a house is kept, and what it is opened for.
type place struct {
	where string
	why   purpose
	made  bool // set if there was no house and opening made one
	later bool // set if a later version wrote it, so that it is only read

	over func(house.Store) house.Store // what is laid over the store; nil is nothing
}

// atHouse opens a kitchen and the house it works for, to be read; done closes
// both. The demo house, which is in memory, can be written to as well.
func atHouse(ctx context.Context, open kitchens, where string) (v *service.Venue, done func(), err error) {
	return atPlace(ctx, open, &place{where: where})
}

// atPlace opens a kitchen and a house for any purpose; done closes both.
func atPlace(ctx context.Context, open kitchens, at *place) (v *service.Venue, done func(), err error) {
	kitchen, shut, err := open(ctx)
	if err != nil {
		return nil, nil, err
	}
	v, leave, err := enter(ctx, kitchen, at, nil)
	if err != nil {
		shut()
		return nil, nil, err
	}
	return v, func() { leave(); shut() }, nil
}

// snapshotOf opens a house, or the demo, as it stands; a house that cannot be
// used in full is an error.
func snapshotOf(ctx context.Context, open kitchens, where string) (*service.Snapshot, func(), error) {
	v, done, err := atHouse(ctx, open, where)
	if err != nil {
		return nil, nil, err
	}
	if err := whole(v); err != nil {
		done()
		return nil, nil, err
	}
	return v.Now(), done, nil
}

// demoOf opens the demo house as it comes with the program, for what asks no
// house.
func demoOf(ctx context.Context, open kitchens) (*service.Snapshot, func(), error) {
	k, done, err := open(ctx)
	if err != nil {
		return nil, nil, err
	}
	h, err := k.Catalogue.Demo()
	if err != nil {
		done()
		return nil, nil, err
	}
	return service.AtRest(k, h), done, nil
}

// enter opens the house that a kitchen works for, and leaves the kitchen open.
func enter(ctx context.Context, kitchen *service.Kitchen, at *place, log *slog.Logger) (v *service.Venue, leave func(), err error) {
	var s house.Store
	about := service.About{Name: nameOf(at.where)}
	if at.where == demoHouse {
		s, about, err = demoStore(ctx, kitchen)
	} else {
		s, err = at.open(ctx)
	}
	if err == nil && at.later && log != nil {
		log.Warn("a later version of this program wrote the house; it is open for reading only, and nothing is saved: use the later version")
	}
	if err == nil {
		top := s
		if at.over != nil {
			top = at.over(s)
		}
		v, err = service.Open(ctx, kitchen, top, about, log)
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
func (at *place) open(ctx context.Context) (s house.Store, err error) {
	s, at.made, err = openHouse(ctx, at.where, at.why)
	if at.why == toServe && errors.Is(err, house.ErrNewer) {
		s, _, err = openHouse(ctx, at.where, toRead)
		at.later = err == nil
	}
	return s, err
}

// demoStore keeps the demo house in memory.
func demoStore(ctx context.Context, kitchen *service.Kitchen) (s house.Store, about service.About, err error) {
	h, err := kitchen.Catalogue.Demo()
	if err != nil {
		return nil, about, err
	}
	if s, err = store.OpenMemory(ctx); err == nil {
		err = service.Fill(ctx, s, h, time.Now())
	}
	return s, service.About{Name: h.Name, Description: h.Description, Invented: h.Invented}, err
}

// nameOf is what a house is called: by its file, never by the address of a
// database, which may hold a password.
func nameOf(where string) string {
	if isDatabase(where) {
		return "the house"
	}
	base := filepath.Base(where)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

func isDatabase(where string) bool {
	return strings.HasPrefix(where, "postgres://") || strings.HasPrefix(where, "postgresql://")
}

// whole returns what of a house cannot be used as one error, nil if all can.
func whole(v *service.Venue) error { return errors.Join(v.Now().Faults...) }
