package exchange_test

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/store"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

var who = house.By{Actor: "ana", At: time.Date(2024, 5, 6, 12, 0, 0, 0, time.UTC)}

type fataler interface {
	require.TestingT
	Helper()
}

func shelf(t fataler) *house.Shelf {
	t.Helper()
	s, err := catalogue()
	require.NoError(t, err)
	return s
}

var catalogue = sync.OnceValues(func() (*house.Shelf, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return house.NewShelf(c.Profiles()), nil
})

func open(t *testing.T) house.Store {
	t.Helper()
	s, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "house.db"), store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, s.Close()) })
	return s
}

func ptr(v float64) *float64 { return &v }

const stockFile = `name,ingredient,size_ml,abv_pct,price,currency,stock,note
The blue cap,gin,700,43.1,24.90,EUR,2.5,"behind the till, left"
No size,gin,,,,,1,
Not a number,gin,seven,,,,1,
Unknown,unobtainium,700,,,,1,
Too strong,vodka,700,140,,,1,

Lemons,lemon juice,1000,,,,3,
"Lemons",lemon juice,1000,,,,3,
too,many,fields,1,2,3,4,5,6
`

// A slip of the unit is asked about, with what may be meant; a keg is not.
func TestNoBottleHoldsMoreThanAKeg(t *testing.T) {
	r, err := readStock(strings.NewReader("name,ingredient,size\nBlue cap,gin,70 l\nLager,pilsner,50 l\n"), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Bad, 1)
	assert.Contains(t, r.Faults(), `"70 l" is 70 litres, more than the largest keg holds`)
	require.Len(t, r.Items, 1)
	assert.InDelta(t, 50000, r.Items[0].(house.Bottle).SizeML, 0)
}

func TestBadRowsAreNumberedAndGoodOnesKept(t *testing.T) {
	f := shelf(t)
	r, err := readStock(strings.NewReader(stockFile), f)
	require.NoError(t, err)
	require.Len(t, r.Items, 2)
	assert.Equal(t, house.Bottle{ID: "the-blue-cap", Name: "The blue cap", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: ptr(43.1)},
		Price: ptr(24.9), Currency: "EUR", SizeML: 700, Stock: 2.5, Note: "behind the till, left"}, r.Items[0])
	var numbers []int
	for _, b := range r.Bad {
		numbers = append(numbers, b.Number)
	}
	assert.Equal(t, []int{3, 4, 5, 6, 9, 10}, numbers, "the blank line counts; "+r.Faults())
	for _, want := range []string{"what a full one holds", `"seven" is not a size`, "unobtainium", `"140" is above 100 %`, "on the list twice", "9 fields"} {
		assert.Contains(t, r.Faults(), want)
	}

	s := open(t)
	_, err = exchange.Import(t.Context(), s, who, r, exchange.AllOrNone)
	require.ErrorIs(t, err, house.ErrInvalid)
	assert.ErrorContains(t, err, "5 (unknown)")
	list, err := s.List(t.Context())
	require.NoError(t, err)
	assert.Empty(t, list)
	for _, want := range []exchange.Result{{Added: 2, Bad: r.Bad}, {Same: 2, Bad: r.Bad}} {
		got, err := exchange.Import(t.Context(), s, who, r, exchange.KeepGood)
		require.NoError(t, err)
		assert.Len(t, got.Changes, want.Added)
		got.Changes = nil
		assert.Equal(t, want, got)
	}
}

func TestCSVOfOtherCountries(t *testing.T) {
	r, err := readStock(strings.NewReader("\xef\xbb\xbfName;Ingredient;Size_ML;Price;Currency\r\nLe bleu;gin;700;24,90;EUR\r\n"), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Items, 1, r.Faults())
	assert.Equal(t, 24.9, *r.Items[0].(house.Bottle).Price)
}

func TestFilesThatAreNoTables(t *testing.T) {
	for text, want := range map[string]string{
		"":                          "is empty",
		"PK\x03\x04 and so on":      "save it as CSV",
		"size,cost\n700 ml,18.50\n": "no column holds the names of the bottles",
	} {
		_, err := readStock(strings.NewReader(text), nil)
		assert.ErrorIs(t, err, house.ErrInvalid)
		assert.ErrorContains(t, err, want)
	}
	for text, want := range map[string]string{
		"":                     "not the JSON of a house",
		"{\n\"format\": oops}": "line 2",
		`{"format":"x"}`:       "field format",
		`{"format":"counterpour-house","version":9}`:                "reads version 1",
		`{"format":"counterpour-house","version":1,"records":[]} x`: "more after the end",
	} {
		_, err := exchange.ReadJSON(strings.NewReader(text))
		assert.ErrorIs(t, err, house.ErrInvalid, text)
		assert.ErrorContains(t, err, want)
	}
}

func TestSpecsFromCSV(t *testing.T) {
	r, err := exchange.ReadSpecs(strings.NewReader(`name,method,service,amount,unit,ingredient
Halyard Sour,shaken,coupe,2,oz,gin
,,,0.75,ounces,lemon juice
,,,6,leaf,mint
Broken,shake,up,2,oz,gin
,,,two,oz,lemon juice
Nameless method,,,2,oz,gin
`), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Specs(), 1)
	assert.Equal(t, house.Spec{ID: "halyard-sour", Name: "Halyard Sour", Method: flavor.Shake, Service: flavor.Up, Pours: []house.Pour{
		{Ingredient: "london-dry-gin", Amount: 2, Unit: flavor.Ounce}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: flavor.Ounce},
		{Ingredient: "mint", Amount: 6, Unit: flavor.Leaf}}}, r.Specs()[0])
	require.Len(t, r.Bad, 2)
	assert.Equal(t, 6, r.Bad[0].Number)
	assert.Equal(t, 7, r.Bad[1].Number)
}

func TestPastedText(t *testing.T) {
	r, err := exchange.ReadText(strings.NewReader(`Halyard Sour

2 oz London dry gin
¾ oz lemon juice
½ oz simple syrup

shake, up


Dockside
2 oz bourbon
1 oz sweet vermouth

Wrong
2 oz unobtainium
`), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Specs(), 2, r.Faults())
	assert.Equal(t, flavor.Shake, r.Specs()[0].Method)
	assert.Equal(t, 0.75, r.Specs()[0].Pours[1].Amount)
	assert.Equal(t, flavor.Stir, r.Specs()[1].Method)
	assert.NotEmpty(t, r.Notes, "what was assumed is said")
	require.Len(t, r.Bad, 1)
	assert.Equal(t, 14, r.Bad[0].Number)
	assert.Contains(t, r.Bad[0].Message, "line 15")
	_, err = exchange.ReadText(strings.NewReader("\n\n"), shelf(t))
	assert.ErrorIs(t, err, house.ErrInvalid)
}

// Recipe documents as other programs write them.
func TestForeignRecipes(t *testing.T) {
	r, err := exchange.ReadRecipes(strings.NewReader(`{"@context":"https://schema.org","@graph":[
	 {"@type":"WebPage","name":"A page"},
	 {"@type":["Recipe","NewsArticle"],"name":"Dockside","identifier":{"@type":"PropertyValue","value":"X 17"},
	  "recipeIngredient":["2 oz bourbon","1&nbsp;oz <b>sweet vermouth</b>","2 dashes aromatic bitters"],
	  "recipeInstructions":[{"@type":"HowToSection","itemListElement":[{"@type":"HowToStep","text":"Stir with ice."},{"@type":"HowToStep","text":"Strain into a coupe, then top up the glass."}]}]},
	 {"@type":"Recipe","name":"Bad","recipeIngredient":["some gin"],"recipeInstructions":"shake"},
	 {"@type":"http://schema.org/Recipe","name":"Old","ingredients":"2 oz gin","recipeInstructions":"Build over ice in a rocks glass"}]}`), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Specs(), 2, r.Faults())
	d := r.Specs()[0]
	assert.Equal(t, "dockside", d.ID)
	assert.Equal(t, flavor.Stir, d.Method)
	assert.Equal(t, flavor.Up, d.Service)
	assert.Len(t, d.Pours, 3)
	assert.Equal(t, flavor.Rocks, r.Specs()[1].Service)
	require.Len(t, r.Bad, 1)
	assert.Equal(t, 2, r.Bad[0].Number)
	assert.Contains(t, r.Bad[0].Message, `"some gin"`)
	for _, text := range []string{`{}`, `[]`, `{"@type":"WebPage"}`, `null`, `[`, strings.Repeat("[", 50) + strings.Repeat("]", 50)} {
		_, err := exchange.ReadRecipes(strings.NewReader(text), shelf(t))
		assert.ErrorIs(t, err, house.ErrInvalid, text)
	}
}

func TestWholeHouseRoundTrips(t *testing.T) {
	a, b := open(t), open(t)
	items := everyKind()
	var edits []house.Edit
	for _, it := range items {
		edits = append(edits, house.Put(it, 0))
	}
	_, err := a.Write(t.Context(), who, edits...)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, exchange.WriteJSON(t.Context(), a, &out))
	r, err := exchange.ReadJSON(&out)
	require.NoError(t, err)
	require.Empty(t, r.Bad)
	result, err := exchange.Import(t.Context(), b, who, r, exchange.AllOrNone)
	require.NoError(t, err)
	assert.Equal(t, len(items), result.Added)
	assert.Equal(t, records(t, a), records(t, b))
}

// records are the items of a house, without versions.
func records(t *testing.T, s house.Store) (out []house.Item) {
	t.Helper()
	list, err := s.List(t.Context())
	require.NoError(t, err)
	for _, e := range list {
		out = append(out, e.Item)
	}
	return out
}

func everyKind() []house.Item {
	spec := house.Spec{ID: "halyard-sour", Name: "Halyard Sour", Method: flavor.Shake, Service: flavor.Up,
		Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: flavor.Ounce}}}
	return []house.Item{
		spec,
		house.Bottle{ID: "a", Name: "A", Ingredient: "vodka", SizeML: 700},
		house.Made{ID: "m", Name: "M", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "water", Amount: 1, Unit: flavor.Ounce}}},
		house.Out{Ingredient: "vodka", Since: who.At},
		house.ServedCover{ID: "c", At: who.At, Spec: spec.ID, Missing: "vodka", Served: spec.Pours, Reception: house.ReceptionSentBack},
		house.Training{ID: "t", At: who.At, Person: "bo", Drill: "acids"},
		house.Right{Spec: spec.ID, SpecVersion: 1},
	}
}

// readStock reads a stock file for a house without bottles.
func readStock(r io.Reader, f naming.Finder) (*exchange.Reading, error) {
	return readStockOver(r, f, nil)
}

// readStockOver reads a stock file for a house with bottles, and settles nothing by hand.
func readStockOver(r io.Reader, f naming.Finder, there []house.Bottle) (*exchange.Reading, error) {
	s, err := exchange.ReadSheet(r, f, there, exchange.Settled{})
	if err != nil {
		return nil, err
	}
	return s.Reading(), nil
}
