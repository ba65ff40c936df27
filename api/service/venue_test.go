package service

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/data/house"
	"counterpour/data/house/pgtest"
	"counterpour/data/house/store"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
	"counterpour/index"
)

func TestMain(m *testing.M) {
	code := m.Run()
	pgtest.Stop()
	os.Exit(code)
}

var catalogue = sync.OnceValues(data.Embedded)

// patience is how long what is waited for may take on a busy machine before a test
// gives it up; no test passes or fails by less.
const patience = time.Minute

var someone = house.By{Actor: "Wren", At: time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)}

// testKitchen is a kitchen of the test's own, since an index has one line.
func testKitchen(t testing.TB) *kitchen.Kitchen {
	t.Helper()
	c, err := catalogue()
	require.NoError(t, err)
	k, err := kitchen.New(c, index.New)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, k.Close()) })
	return k
}

func open(t *testing.T, s house.Store) *Venue {
	t.Helper()
	v, err := Open(t.Context(), testKitchen(t), s, About{Name: "The Dock"}, nil)
	require.NoError(t, err)
	t.Cleanup(v.Close)
	return v
}

// openDemo opens the demo house in a store in memory, with what it was made of.
func openDemo(t *testing.T) (*Venue, *data.House) {
	t.Helper()
	k, s := testKitchen(t), storetest.Memory(t)
	h, err := k.Catalogue.Demo()
	require.NoError(t, err)
	require.NoError(t, Fill(t.Context(), s, h, someone.At))
	v, err := Open(t.Context(), k, s, About{Name: h.Name, Description: h.Description, Invented: h.Invented}, nil)
	require.NoError(t, err)
	t.Cleanup(v.Close)
	return v, h
}

func put(t *testing.T, s house.Store, version int64, items ...house.Item) {
	t.Helper()
	for _, it := range items {
		_, err := s.Write(t.Context(), someone, house.Put(it, version))
		require.NoError(t, err)
	}
}

func drink(t *testing.T, v *Venue, text string) house.Spec {
	t.Helper()
	return house.FromSpec("", readDraft(t, v.Now(), text))
}

const sour = "Quay Sour\n2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up\n"

// A write is part of every part of the snapshot when it returns.
func TestSnapshotIncludesAReturnedWrite(t *testing.T) {
	v := open(t, storetest.Memory(t))
	s := v.Store()
	assert.Empty(t, v.Now().Menu)
	empty := v.Now().Version

	strength, price := 57.0, 28.0
	put(t, s, 0, house.Bottle{ID: "dock-gin", Name: "Dock gin No. 9", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1,
		Measured: house.Measured{ABVPct: &strength}, Price: &price, Currency: "EUR"})
	p, m, err := v.Now().Index.Resolve("dock gin no. 9")
	require.NoError(t, err, "an added bottle is found at once")
	assert.Equal(t, flavor.MatchAlias, m.How)
	assert.InDelta(t, strength, p.ABV.Value, 1e-9)
	assert.NotEqual(t, empty, v.Now().Version)
	assert.InDelta(t, price/700, v.Now().Prices.PerML["london-dry-gin"], 1e-12)
	assert.Equal(t, []*flavor.Profile{p}, v.Now().Stock)

	put(t, s, 0, house.Made{ID: "dock-syrup", Name: "dock syrup", Class: flavor.ClassSyrup, YieldML: 900,
		Parts: []house.Pour{{Ingredient: "simple-syrup", Amount: 600, Unit: flavor.Millilitre}, {Ingredient: "water", Amount: 300, Unit: flavor.Millilitre}}})
	_, _, err = v.Now().Index.Resolve("dock syrup")
	require.NoError(t, err, "what the house makes is found at once")

	version := v.Now().Version
	put(t, s, 0, drink(t, v, sour))
	require.Len(t, v.Now().Menu, 1)
	assert.Equal(t, "sour", v.Now().Menu[0].Family)
	assert.Same(t, p, v.Now().Menu[0].Spec.Pours[0].Profile)
	assert.Equal(t, version, v.Now().Version, "a spec is no reason for another index")

	before := v.Now().Index
	put(t, s, 0, house.Out{Ingredient: "london-dry-gin", Since: someone.At})
	assert.Equal(t, []*flavor.Profile{p}, v.Now().Out)
	assert.Same(t, before, v.Now().Index)
	_, err = s.Undo(t.Context(), someone, house.Ref{Kind: house.KindOut, ID: "london-dry-gin"}, 1)
	require.NoError(t, err)
	assert.Empty(t, v.Now().Out)
}

// A bottle of which nothing is left has run out.
func TestEmptyBottleIsOut(t *testing.T) {
	v := open(t, storetest.Memory(t))
	for i, stock := range []float64{0, 0} {
		put(t, v.Store(), 0, house.Bottle{ID: fmt.Sprint("gin-", i), Name: fmt.Sprint("gin ", i), Ingredient: "london-dry-gin", SizeML: 700, Stock: stock})
	}
	require.Len(t, v.Now().Out, 1)
	put(t, v.Store(), 1, house.Bottle{ID: "gin-1", Name: "gin 1", Ingredient: "london-dry-gin", SizeML: 700, Stock: 0.5})
	assert.Empty(t, v.Now().Out)
}

// A write of another server to the same store is taken up, and listeners are notified.
func TestWritesOfAnotherVenueAreTakenUp(t *testing.T) {
	s := storetest.Memory(t)
	v := open(t, s)
	told := v.Changes(t.Context())
	put(t, s, 0, house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1})
	select {
	case <-told:
	case <-time.After(patience):
		t.Fatal("nobody said that there is a bottle more")
	}
	assert.Len(t, v.Now().Stock, 1)
}

// Two servers share a database: what is marked at one is out at the other, and other
// venues are not notified.
func TestTwoServersOfOneVenue(t *testing.T) {
	dsn, name := pgtest.DSN(t), pgtest.Venue()
	at := func(name string) *Venue {
		s, err := store.OpenPostgres(t.Context(), dsn, store.Options{Venue: name})
		require.NoError(t, err)
		t.Cleanup(func() { assert.NoError(t, s.Close()) })
		return open(t, s)
	}
	one, two, other := at(name), at(name), at(pgtest.Venue())
	told := two.Changes(t.Context())
	put(t, one.Store(), 0, house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1},
		house.Out{Ingredient: "london-dry-gin", Since: someone.At})
	assert.Eventually(t, func() bool { return len(two.Now().Out) == 1 }, patience, 10*time.Millisecond)
	select {
	case <-told:
	case <-time.After(patience):
		t.Error("the other server's screens were not told")
	}
	assert.Empty(t, other.Now().Stock)
}

// The index is derived: whatever happened between a write and its effect, the next start
// reads the store.
func TestRestartReadsTheStore(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dock.house")
	s, err := store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	// Nobody follows: as after a crash between the write and the index.
	put(t, s, 0, house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1})
	require.NoError(t, s.Close())
	s, err = store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, s.Close()) })
	v := open(t, s)
	_, _, err = v.Now().Index.Resolve("dock gin")
	assert.NoError(t, err)
}

// Drinks marked as right move the family, in the version that was tasted.
func TestRightDrinksMoveThePalate(t *testing.T) {
	v := open(t, storetest.Memory(t))
	dry := drink(t, v, "Quay Sour\n2 oz London dry gin\n1 oz lemon juice\n1/2 oz simple syrup\nshake, up\n")
	put(t, v.Store(), 0, dry, house.Right{Spec: dry.ID, SpecVersion: 1})
	palates := v.Now().Set.Palates()
	require.Len(t, palates, 1)
	assert.Equal(t, "sour", palates[0].ID)
	put(t, v.Store(), 1, drink(t, v, sour)) // the mark is of the version before
	assert.Equal(t, palates, v.Now().Set.Palates())
	_, err := v.Store().Write(t.Context(), someone, house.Remove(house.Ref{Kind: house.KindRight, ID: dry.ID}, 1))
	require.NoError(t, err)
	assert.Empty(t, v.Now().Set.Palates())
}

// Unusable records are left out and reported; the others work.
func TestUnusableRecordsAreReported(t *testing.T) {
	v := open(t, storetest.Memory(t))
	good := drink(t, v, sour)
	bad := good
	bad.ID, bad.Name = "lost", "Lost"
	bad.Pours = []house.Pour{{Ingredient: "nothing-known", Amount: 1, Unit: flavor.Ounce}}
	put(t, v.Store(), 0, good, bad)
	require.Len(t, v.Now().Menu, 1)
	require.Len(t, v.Now().Faults, 1)
	assert.ErrorContains(t, v.Now().Faults[0], "nothing-known")
}

// The demo goes into a store and comes out as it was.
func TestDemoInAStore(t *testing.T) {
	v, demo := openDemo(t)
	assert.Empty(t, v.Now().Faults)
	assert.ElementsMatch(t, idsOf(demo.Stock), idsOf(v.Now().Stock))
	assert.ElementsMatch(t, idsOf(demo.Out), idsOf(v.Now().Out))
	assert.Len(t, v.Now().Menu, len(demo.Specs))
	for _, d := range v.Now().Menu {
		assert.Empty(t, v.Now().Prices.Drink(d.Spec).Unpriced, d.Slug)
	}
}

func idsOf(list []*flavor.Profile) []string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = p.ID
	}
	slices.Sort(out)
	return out
}

// Fifty concurrent clients: every write is seen, and every reader sees a consistent
// house.
func TestFiftyAtOnce(t *testing.T) {
	v := open(t, storetest.Memory(t))
	spec := drink(t, v, sour)
	put(t, v.Store(), 0, spec)
	var all sync.WaitGroup
	for i := range 50 {
		all.Go(func() {
			id := fmt.Sprint("bottle-", i)
			_, err := v.Store().Write(t.Context(), someone, house.Put(house.Bottle{ID: id, Name: id, Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, 0))
			assert.NoError(t, err)
			d, err := v.Now().ReadText("2 oz London dry gin\n3/4 oz lemon juice\nshake, up")
			assert.NoError(t, err)
			assert.Len(t, d.Pours, 2)
			assert.Len(t, v.Now().Menu, 1)
		})
	}
	all.Wait()
	bottles, err := house.All[house.Bottle](t.Context(), v.Store())
	require.NoError(t, err)
	assert.Len(t, bottles, 50)
	_, _, err = v.Now().Index.Resolve("bottle-0") // only the one that is poured lends its name
	assert.NoError(t, err)
}

// BenchmarkMark is a bottle marked as out, and back.
func BenchmarkMark(b *testing.B) {
	k := testKitchen(b)
	s := storetest.Memory(b)
	h, err := k.Catalogue.Demo()
	require.NoError(b, err)
	require.NoError(b, Fill(b.Context(), s, h, someone.At))
	v, err := Open(b.Context(), k, s, About{}, nil)
	require.NoError(b, err)
	defer v.Close()
	out := house.Ref{Kind: house.KindOut, ID: "london-dry-gin"}
	for b.Loop() {
		marked, err := v.Store().Write(b.Context(), someone, house.Put(house.Out{Ingredient: out.ID, Since: someone.At}, 0))
		require.NoError(b, err)
		_, err = v.Store().Write(b.Context(), someone, house.Remove(out, marked[0].Version))
		require.NoError(b, err)
	}
}
