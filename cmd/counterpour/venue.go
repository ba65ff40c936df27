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
)

// demoHouse is where the invented house lives: in memory, until the program ends.
const demoHouse = ""

// atHouse opens a kitchen and the house it works for, of which done closes both.
func atHouse(ctx context.Context, open kitchens, where string) (v *service.Venue, done func(), err error) {
	kitchen, shut, err := open(ctx, nil)
	if err != nil {
		return nil, nil, err
	}
	v, leave, err := enter(ctx, kitchen, where, nil)
	if err != nil {
		shut()
		return nil, nil, err
	}
	return v, func() { leave(); shut() }, nil
}

// kitchenOf opens the kitchen of a house, or of the demo; a house that cannot be
// used in full is an error.
func kitchenOf(ctx context.Context, open kitchens, where string) (*service.Kitchen, func(), error) {
	v, done, err := atHouse(ctx, open, where)
	if err != nil {
		return nil, nil, err
	}
	if err := whole(v); err != nil {
		done()
		return nil, nil, err
	}
	return v.Kitchen(), done, nil
}

// enter opens the house that a kitchen works for, and leaves the kitchen open.
func enter(ctx context.Context, kitchen *service.Kitchen, where string, log *slog.Logger) (v *service.Venue, leave func(), err error) {
	var s house.Store
	about := service.About{Name: nameOf(where)}
	if where == demoHouse {
		about = service.About{Name: kitchen.House.Name, Description: kitchen.House.Description, Invented: kitchen.House.Invented}
		if s, err = house.OpenMemory(ctx); err == nil {
			err = service.Fill(ctx, s, kitchen.House, time.Now())
		}
	} else {
		s, err = openHouse(ctx, where)
	}
	if err == nil {
		v, err = service.Open(ctx, kitchen, s, about, log)
	}
	if err != nil {
		if s != nil {
			_ = s.Close() // the error at hand says more
		}
		return nil, nil, err
	}
	return v, func() { v.Close(); _ = s.Close() }, nil // every write is durable already
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
