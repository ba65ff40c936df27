package store

import (
	"context"
	"embed"
	"fmt"
	"io/fs"
)

//go:embed migrations
var migrations embed.FS

// migration is one step of the schema; its number is its position, from 1. Never edit the
// text of a released step, not even a comment: existing files contain that text, and are
// compared with it.
type migration struct {
	name string
	text string
}

// migrationsOf returns the steps for an engine, in order.
func migrationsOf(engine string) ([]migration, error) {
	dir := "migrations/" + engine
	entries, err := fs.ReadDir(migrations, dir) // sorted by name
	if err != nil {
		return nil, err
	}
	var out []migration
	for i, e := range entries {
		if want := fmt.Sprintf("%04d-", i+1); len(e.Name()) < 5 || e.Name()[:5] != want {
			return nil, fmt.Errorf("migration %s should start with %s", e.Name(), want)
		}
		text, err := fs.ReadFile(migrations, dir+"/"+e.Name())
		if err != nil {
			return nil, err
		}
		out = append(out, migration{e.Name(), string(text)})
	}
	return out, nil
}

// The first schema versions with links and with ephemerals.
const (
	linkedSchema    = 2
	ephemeralSchema = 3
)

// migrate brings the schema from one version to the newest. It runs in the caller's
// transaction, so that it is done completely or not at all.
func migrate(ctx context.Context, c conn, engine, key string, from int) (to int, err error) {
	steps, err := migrationsOf(engine)
	if err != nil {
		return from, err
	}
	if from > len(steps) {
		return from, newer("open", key, from, len(steps))
	}
	for i := from; i < len(steps); i++ {
		if err := c.exec(ctx, steps[i].text); err != nil {
			return from, fmt.Errorf("migration %s: %w", steps[i].name, err)
		}
	}
	return len(steps), nil
}
