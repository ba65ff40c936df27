package store

import (
	"math"
	"testing"

	"counterpour/data/house"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func triangle() house.Triangle {
	return house.Triangle{ID: "triangle-a", At: noon, Drink: "Halyard Sour", Cover: "with honey syrup", GlassML: 25, Alpha: 0.05, Share: 0.5,
		Servings: []house.TriangleServing{{Order: "AAB", Codes: [3]int{412, 118, 730}, Picked: 730}, {Order: "BAB", Codes: [3]int{100, 999, 555}}}}
}

func round() house.Training {
	quality := 4
	return house.Training{ID: "round-a", At: noon, Person: "bo", Drill: "fault:sour:6:2r", Question: "what is off?", Wanted: "too little acid", Given: "too little acid",
		Right: true, Score: number(1), Kind: "fault", Axis: "sour", SizeJND: number(5.25), Quality: &quality}
}

func TestTriangleAndRoundsOnEveryEngine(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		test, quality := triangle(), round()
		write(t, s, house.Put(test, 0), house.Put(quality, 0))
		test.Servings[1].Picked, *quality.Quality = 555, 0 // what is handed in is not shared
		kept, err := house.Get[house.Triangle](t.Context(), s, "triangle-a")
		require.NoError(t, err)
		assert.Equal(t, triangle(), kept.Item)
		kept.Item.Servings[1].Picked, kept.Item.Closed = 555, true
		write(t, s, house.Put(kept.Item, kept.Version))
		_, err = s.Write(t.Context(), who, house.Put(triangle(), kept.Version))
		assert.ErrorIs(t, err, house.ErrConflict, "picks are not written over")
		back, err := house.Get[house.Training](t.Context(), s, "round-a")
		require.NoError(t, err)
		assert.Equal(t, round(), back.Item)
		_, err = s.Write(t.Context(), who, house.Put(round(), 0))
		assert.ErrorIs(t, err, house.ErrConflict, "a round counts once")
	})
}

// A record of before, without what progress is worked out from, reads as it did.
func TestTrainingOfAnEarlierVersion(t *testing.T) {
	const before = `{"id":"training-a","at":"2024-05-06T12:00:00Z","person":"bo","drill":"acids","question":"which is malic?","wanted":"b","given":"b","right":true,"score":1}`
	item, err := house.Decode(house.KindTraining, []byte(before))
	require.NoError(t, err)
	got := item.(house.Training)
	assert.Empty(t, got.Kind)
	assert.Nil(t, got.Quality)
	again, err := house.Encode(got)
	require.NoError(t, err)
	assert.JSONEq(t, before, string(again))
}

func TestItemsOfTrainingReadBack(t *testing.T) {
	for _, it := range []house.Item{triangle(), round()} {
		body, err := house.Encode(it)
		require.NoError(t, err)
		got, err := house.Decode(it.Ref().Kind, body)
		require.NoError(t, err)
		assert.Equal(t, it, got)
	}
}

func TestRulesOfTraining(t *testing.T) {
	for about, spoil := range map[string]func(*house.Triangle){
		"no drink":           func(x *house.Triangle) { x.Drink = " " },
		"two lines":          func(x *house.Triangle) { x.Cover = "a\nb" },
		"a bucket":           func(x *house.Triangle) { x.GlassML = 5000 },
		"alpha not a number": func(x *house.Triangle) { x.Alpha = math.NaN() },
		"a share over all":   func(x *house.Triangle) { x.Share = 1.1 },
		"nobody":             func(x *house.Triangle) { x.Servings = nil },
		"a crowd":            func(x *house.Triangle) { x.Servings = make([]house.TriangleServing, house.MaxList+1) },
		"no such order":      func(x *house.Triangle) { x.Servings[0].Order = "AAA" },
		"a code of four":     func(x *house.Triangle) { x.Servings[0].Codes[0] = 1000 },
		"a code twice":       func(x *house.Triangle) { x.Servings[0].Codes[0] = x.Servings[0].Codes[2] },
		"another's glass":    func(x *house.Triangle) { x.Servings[0].Picked = 555 },
		"no id":              func(x *house.Triangle) { x.ID = "" },
	} {
		x := triangle()
		spoil(&x)
		assert.ErrorIs(t, house.Check(x), house.ErrInvalid, about)
	}
	for about, spoil := range map[string]func(*house.Training){
		"a kind of two lines": func(x *house.Training) { x.Kind = "a\nb" },
		"a size below none":   func(x *house.Training) { *x.SizeJND = -1 },
		"a size without end":  func(x *house.Training) { *x.SizeJND = math.Inf(1) },
		"a quality of six":    func(x *house.Training) { *x.Quality = 6 },
	} {
		x := round()
		spoil(&x)
		assert.ErrorIs(t, house.Check(x), house.ErrInvalid, about)
	}
	assert.NoError(t, house.Check(triangle()))
	assert.NoError(t, house.Check(round()))
}
