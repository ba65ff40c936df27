package house

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/data/house/pgtest"
	"counterpour/flavor"
)

// noon is the time of every write in the tests; who is their actor.
var (
	noon = time.Date(2024, 5, 6, 12, 0, 0, 0, time.UTC)
	who  = By{Actor: "ana", At: noon}
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
	open func(t *testing.T) Store
	// again opens a second store on the same venue, nil if that is not allowed.
	again func(t *testing.T, s Store) Store
}

func openMemory(t *testing.T) Store {
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
			open:  func(t *testing.T) Store { return openVenue(t, dsn, pgtest.Venue()) },
			again: func(t *testing.T, s Store) Store { return openVenue(t, dsn, s.(*keeper).venue) },
		})
	})
}

func openFile(t *testing.T) Store {
	t.Helper()
	return openAt(t, filepath.Join(t.TempDir(), "house.db"), Options{})
}

func openAt(t *testing.T, path string, o Options) Store {
	t.Helper()
	s, err := Open(t.Context(), path, o)
	require.NoError(t, err)
	closeAtEnd(t, s)
	return s
}

// closeAtEnd closes a store and checks it first, unless the test closed it.
func closeAtEnd(t *testing.T, s Store) {
	t.Cleanup(func() {
		if err := s.Check(context.Background()); err != nil {
			require.ErrorIs(t, err, ErrClosed)
		}
		require.NoError(t, s.Close())
	})
}

func number(v float64) *float64 { return &v }

func gin() Bottle {
	return Bottle{ID: "navy-gin-1", Name: "Navy gin, the blue cap", Ingredient: "london-dry-gin",
		Measured: Measured{ABVPct: number(43.1)}, Price: number(24.90), Currency: "EUR", SizeML: 700, Stock: 2.5}
}

func sour() Spec {
	return Spec{ID: "halyard-sour", Name: "Halyard Sour", Method: flavor.Shake, Service: flavor.Up, Pours: []Pour{
		{"london-dry-gin", 2, flavor.Ounce}, {"lemon-juice", 0.75, flavor.Ounce}, {"simple-syrup", 0.5, flavor.Ounce}}}
}

func cover() Cover {
	return Cover{At: noon, Spec: "halyard-sour", SpecVersion: 1, Missing: "simple-syrup", Verdict: VerdictKept, Score: number(7.5), Taster: "bo",
		Served: []Pour{{"london-dry-gin", 2, flavor.Ounce}, {"honey-syrup", 0.5, flavor.Ounce}}}
}

// every is one item of each kind, in an order in which they can be written.
func every() []Item {
	return []Item{gin(), sour(),
		Made{ID: "halyard-oleo", Name: "Halyard oleo", Class: flavor.ClassCordial, YieldML: 900, Method: "Leave overnight.\nStrain.", KeepsDays: 7,
			Aliases: []string{"oleo of the house"}, Measured: Measured{Brix: number(48.5)},
			Parts: []Pour{{"white-sugar", 500, flavor.Gram}, {"lemon-juice", 300, flavor.Millilitre}, {"water", 300, flavor.Millilitre}}},
		Out{Ingredient: "lime-juice", Since: noon, Note: "late delivery"},
		cover().withID("cover-a"),
		Training{ID: "training-a", At: noon, Person: "bo", Drill: "acids", Question: "which is malic?", Wanted: "b", Given: "b", Right: true, Score: number(1)},
		Right{Spec: "halyard-sour", SpecVersion: 1, Note: "as we like it"},
	}
}

func write(t *testing.T, s Store, edits ...Edit) []Change {
	t.Helper()
	done, err := s.Write(t.Context(), who, edits...)
	require.NoError(t, err)
	return done
}

func putAll(items []Item) (edits []Edit) {
	for _, it := range items {
		edits = append(edits, Put(it, 0))
	}
	return edits
}
