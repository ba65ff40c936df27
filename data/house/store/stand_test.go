package store

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/pgtest"
	"counterpour/flavor"
)

// noon is the time of every write in the tests; who is their actor.
var (
	noon = time.Date(2024, 5, 6, 12, 0, 0, 0, time.UTC)
	who  = house.By{Actor: "ana", At: noon}
)

func TestMain(m *testing.M) {
	if path := os.Getenv(childEnv); path != "" {
		os.Exit(child(path))
	}
	code := m.Run()
	pgtest.Stop()
	os.Exit(code)
}

// engine opens empty stores of one kind.
type engine struct {
	name string
	open func(t *testing.T) house.Store
	// again opens a second store on the same venue, nil if that is not allowed.
	again func(t *testing.T, s house.Store) house.Store
}

func openMemory(t *testing.T) house.Store {
	s, err := OpenMemory(t.Context())
	require.NoError(t, err)
	closeAtEnd(t, s)
	return s
}

// onEveryEngine runs a test on each engine.
func onEveryEngine(t *testing.T, f func(t *testing.T, e engine)) {
	t.Run("memory", func(t *testing.T) { f(t, engine{name: "memory", open: openMemory}) })
	t.Run("sqlite", func(t *testing.T) { f(t, engine{name: "sqlite", open: openFile}) })
	t.Run("postgres", func(t *testing.T) {
		dsn := pgtest.DSN(t)
		f(t, engine{name: "postgres",
			open:  func(t *testing.T) house.Store { return openVenue(t, dsn, pgtest.Venue()) },
			again: func(t *testing.T, s house.Store) house.Store { return openVenue(t, dsn, s.(*keeper).venue) },
		})
	})
}

func openFile(t *testing.T) house.Store {
	t.Helper()
	return openAt(t, filepath.Join(t.TempDir(), "house.db"), Options{})
}

func openAt(t *testing.T, path string, o Options) house.Store {
	t.Helper()
	s, err := Open(t.Context(), path, o)
	require.NoError(t, err)
	closeAtEnd(t, s)
	return s
}

// closeAtEnd closes a store and checks it first, unless the test closed it.
func closeAtEnd(t *testing.T, s house.Store) {
	t.Cleanup(func() {
		if err := s.Check(context.Background()); err != nil {
			require.ErrorIs(t, err, house.ErrClosed)
		}
		require.NoError(t, s.Close())
	})
}

func number(v float64) *float64 { return &v }

func gin() house.Bottle {
	return house.Bottle{ID: "navy-gin-1", Name: "Navy gin, the blue cap", Ingredient: "london-dry-gin",
		Measured: house.Measured{ABVPct: number(43.1)}, Price: number(24.90), Currency: "EUR", SizeML: 700, Stock: 2.5}
}

func sour() house.Spec {
	return house.Spec{ID: "halyard-sour", Name: "Halyard Sour", Method: flavor.Shake, Service: flavor.Up, Pours: []house.Pour{
		{Ingredient: "london-dry-gin", Amount: 2, Unit: flavor.Ounce}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: flavor.Ounce}, {Ingredient: "simple-syrup", Amount: 0.5, Unit: flavor.Ounce}}}
}

func cover() house.ServedCover {
	return house.ServedCover{At: noon, Spec: "halyard-sour", SpecVersion: 1, Missing: "simple-syrup", Reception: house.ReceptionKept, Score: number(7.5), Taster: "bo",
		Served: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: flavor.Ounce}, {Ingredient: "honey-syrup", Amount: 0.5, Unit: flavor.Ounce}}}
}

// every is one item of each kind, in an order in which they can be written.
func every() []house.Item {
	return []house.Item{gin(), sour(),
		house.Made{ID: "halyard-oleo", Name: "Halyard oleo", Class: flavor.ClassCordial, YieldML: 900, Method: "Leave overnight.\nStrain.", KeepsDays: 7,
			Aliases: []string{"oleo of the house"}, Measured: house.Measured{Brix: number(48.5)},
			Parts: []house.Pour{{Ingredient: "white-sugar", Amount: 500, Unit: flavor.Gram}, {Ingredient: "lemon-juice", Amount: 300, Unit: flavor.Millilitre}, {Ingredient: "water", Amount: 300, Unit: flavor.Millilitre}}},
		house.Out{Ingredient: "lime-juice", Since: noon, Note: "late delivery"},
		house.WithID(cover(), "cover-a"),
		house.Training{ID: "training-a", At: noon, Person: "bo", Drill: "acids", Question: "which is malic?", Wanted: "b", Given: "b", Right: true, Score: number(1)},
		house.Right{Spec: "halyard-sour", SpecVersion: 1, Note: "as we like it"},
	}
}

func write(t *testing.T, s house.Store, edits ...house.Edit) []house.Change {
	t.Helper()
	done, err := s.Write(t.Context(), who, edits...)
	require.NoError(t, err)
	return done
}

func putAll(items []house.Item) (edits []house.Edit) {
	for _, it := range items {
		edits = append(edits, house.Put(it, 0))
	}
	return edits
}
