package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/records"
	"counterpour/data/house"
	"counterpour/flavor"
)

// After every kind of change, the derived snapshot equals one made from scratch.
func TestDerivedSnapshotEqualsAFreshOne(t *testing.T) {
	v, _ := openDemo(t)
	s := v.Store()
	write := func(edits ...house.Edit) {
		_, err := s.Write(t.Context(), someone, edits...)
		require.NoError(t, err)
	}
	first := v.Now().Menu[0]
	version := func(ref house.Ref) int64 {
		e, err := s.Get(t.Context(), ref)
		require.NoError(t, err)
		return e.Version
	}
	strength := 52.0
	gin := house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1, Measured: house.Measured{ABVPct: &strength}}
	for _, step := range []struct {
		what   string
		change func()
	}{
		{"nothing", func() {}},
		{"a mark", func() { write(house.Put(house.Out{Ingredient: v.Now().Stock[0].ID, Since: someone.At}, 0)) }},
		{"a spec more", func() { put(t, s, 0, drink(t, v, sour)) }},
		{"a spec changed", func() {
			changed := drink(t, v, sour)
			changed.Note = "in the small glass"
			put(t, s, 1, changed)
		}},
		{"a bottle measured", func() { put(t, s, 0, gin) }},
		{"a spec marked as right", func() {
			put(t, s, 0, house.Right{Spec: first.Slug, SpecVersion: first.Version})
		}},
		{"a name", func() { put(t, s, 0, house.Name{ID: "dockside", Written: "dockside", Ingredient: "london-dry-gin"}) }},
		{"a cover that came back", func() {
			put(t, s, 0, house.ServedCover{Spec: "quay-sour", SpecVersion: 2, Missing: "london-dry-gin", At: someone.At, Reception: house.ReceptionSentBack,
				Served: []house.Pour{{Ingredient: "vodka", Amount: 2, Unit: flavor.Ounce}}})
		}},
		{"a spec gone", func() { write(house.Remove(house.Ref{Kind: house.KindSpec, ID: "quay-sour"}, 2)) }},
		{"the bottle gone", func() {
			ref := house.Ref{Kind: house.KindBottle, ID: "dock-gin"}
			write(house.Remove(ref, version(ref)))
		}},
		{"the settings", func() {
			said := v.Now().Settings
			said.Name = "The Other Dock"
			at := int64(0)
			if e, err := s.Get(t.Context(), said.Ref()); err == nil {
				at = e.Version
			}
			put(t, s, at, said)
		}},
	} {
		step.change()
		got := v.Now()
		want, err := (&Snapshot{Kitchen: v.base, Shelf: v.bare}).next(t.Context(), v.base, v.inner, v.about, v.log)
		require.NoError(t, err, step.what)
		assert.Equal(t, want.Menu, got.Menu, step.what)
		assert.Equal(t, want.Stock, got.Stock, step.what)
		assert.Equal(t, want.Out, got.Out, step.what)
		assert.Equal(t, want.Tastings, got.Tastings, step.what)
		assert.Equal(t, want.Prices, got.Prices, step.what)
		assert.Equal(t, want.Settings, got.Settings, step.what)
		assert.Equal(t, want.About, got.About, step.what)
		assert.Equal(t, want.Version, got.Version, step.what)
		assert.Equal(t, want.right, got.right, step.what)
		assert.Equal(t, want.Faults, got.Faults, step.what)
		assert.GreaterOrEqual(t, got.upTo, want.upTo, step.what)
	}
}

// A mark recomputes only what is out.
func TestMarkReusesTheMenu(t *testing.T) {
	v, _ := openDemo(t)
	before := v.Now()
	put(t, v.Store(), 0, house.Out{Ingredient: before.InStock()[0].ID, Since: someone.At})
	require.Len(t, v.Now().Out, len(before.Out)+1)
	assert.Same(t, &before.Menu[0], &v.Now().Menu[0])

	since, err := records.Read(t.Context(), v.Store(), before.from)
	require.NoError(t, err)
	assert.Equal(t, []house.Kind{house.KindOut}, since.Anew)
}
