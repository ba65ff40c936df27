package exchange_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/column"
)

// sheetOf reads a file as a manager of a bar may keep it. All of them are invented,
// and so is every name on a label.
func sheetOf(t *testing.T, file string, there []house.Bottle, settled exchange.Settled) *exchange.Sheet {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", "stock", file))
	require.NoError(t, err)
	defer f.Close()
	s, err := exchange.ReadSheet(f, shelf(t), there, settled)
	require.NoError(t, err)
	return s
}

// inShort is a bottle in a line: its name, kind, size, price, strength and number.
func inShort(b house.Bottle) string {
	out := []string{b.Name, b.Ingredient, fmt.Sprintf("%g ml", b.SizeML)}
	if b.SizeG > 0 {
		out[2] = fmt.Sprintf("%g g", b.SizeG)
	}
	price, strength := "no price", "as known"
	if b.Price != nil {
		price = fmt.Sprintf("%.2f %s", *b.Price, b.Currency)
	}
	if b.ABVPct != nil {
		strength = fmt.Sprintf("%g %%", *b.ABVPct)
	}
	return strings.Join(append(out, price, strength, fmt.Sprintf("× %g", b.Stock)), ", ")
}

func TestFilesInUsualForms(t *testing.T) {
	for file, want := range map[string][]string{
		"american.csv": {
			"Gaff Rig Dry, london-dry-gin, 750 ml, 18.50 USD, as known, × 3",
			"Gaff Rig Navy, navy-strength-gin, 1000 ml, 32.00 USD, as known, × 1",
			"Old Mole Bourbon, bourbon, 1000 ml, 1024.00 USD, as known, × 1",
			"Old Mole Rye, rye-whiskey, 750 ml, 27.25 USD, as known, × 2",
			"Bowline Blanco, blanco-tequila, 1000 ml, 29.00 USD, as known, × 4.5",
			"Sternpost Orange, triple-sec, 750 ml, 21.10 USD, as known, × 1",
			"Ropewalk Bitters, aromatic-bitters, 295.735 ml, 15.75 USD, as known, × 1",
			"Ratline Red, sweet-vermouth, 1000 ml, 14.00 USD, as known, × 2.5",
		},
		"british.csv": {
			"Capstan Gin, london-dry-gin, 700 ml, 18.40 GBP, 41.2 %, × 2",
			"Capstan Sloe, sloe-gin, 500 ml, 17.20 GBP, 26 %, × 1",
			"Halfdeck White, white-rum, 700 ml, 16.00 GBP, 37.5 %, × 3",
			"Halfdeck Aged 8, aged-rum, 700 ml, 28.00 GBP, 40 %, × 1",
			"Lantern Fino, fino-sherry, 750 ml, 9.75 GBP, 15 %, × 2",
			"Kelp Tonic, tonic-water, 200 ml, 0.62 GBP, as known, × 48",
		},
		"central.csv": {
			"Kleiner Anker, london-dry-gin, 700 ml, 24.90 EUR, as known, × 2",
			"Alte Mühle, rye-whiskey, 700 ml, 31.00 EUR, as known, × 1.5",
			"Crème de nuit, creme-de-cassis, 500 ml, 12.00 EUR, as known, × 1",
			"Fasswerk, bourbon, 1000 ml, 1029.50 EUR, as known, × 1",
		},
		"count-sheet.csv": {
			"Tiller dry, london-dry-gin, 700 ml, 18.00 EUR, as known, × 2",
			"Tiller overproof navy strength, navy-strength-gin, 700 ml, 27.00 EUR, as known, × 1",
			"Scupper white, white-rum, 1000 ml, 19.00 EUR, as known, × 2",
			"Scupper aged, aged-rum, 700 ml, 26.00 EUR, as known, × 0.75",
			"Keelson dry, dry-vermouth, 750 ml, 9.00 EUR, as known, × 1",
			"Keelson sweet, sweet-vermouth, 750 ml, 9.50 EUR, as known, × 2",
		},
		"untitled.csv": {
			"Marlinspike London dry gin, london-dry-gin, 700 ml, 19.00 GBP, as known, × 2",
			"Marlinspike vodka, vodka, 1000 ml, 21.50 GBP, as known, × 3",
			"Windlass bourbon, bourbon, 700 ml, 28.00 GBP, as known, × 1",
			"Windlass coffee liqueur, coffee-liqueur, 500 ml, 15.25 GBP, as known, × 1",
		},
		"tabs.tsv": {
			"Oakum, rye-whiskey, 750 ml, no price, 50 %, × 2",
			"Oakum Reserve, bourbon, 750 ml, no price, 45.2 %, × 1",
			"Ballast, vodka, 1000 ml, no price, 40 %, × 4",
			"Pitch, fernet, 700 ml, no price, 39 %, × 0",
		},
		"departments.csv": {
			"Foresail Reposado, reposado-tequila, 700 ml, 30.00 EUR, as known, × 2",
			"Foresail Espadín, mezcal, 700 ml, 36.00 EUR, as known, × 1",
			"Topgallant Elder, elderflower-liqueur, 500 ml, 16.40 EUR, as known, × 1",
			"Topgallant Cherry, maraschino-liqueur, 700 ml, 22.00 EUR, as known, × 1",
			"Bosun's Ginger, ginger-beer, 200 ml, 0.90 EUR, as known, × 36",
			"Galley Lemons, lemon-juice, 1000 ml, 4.20 EUR, as known, × 2",
			"Galley Nut, orgeat, 1000 g, 9.90 EUR, as known, × 0.5",
		},
	} {
		t.Run(file, func(t *testing.T) {
			s := sheetOf(t, file, nil, exchange.Settled{})
			var got []string
			for _, r := range s.Rows {
				if r.LeftOut == "" {
					assert.Empty(t, r.Faults, r.Bottle.Name)
					got = append(got, inShort(r.Bottle))
				}
			}
			assert.Equal(t, want, got)
			assert.Empty(t, s.Reading().Bad)
		})
	}
}

// Every fault of a row is there at once, each with what would mend it; settling
// them by those remedies makes the row good, and nothing else is lost meanwhile.
func TestEveryFaultOfARowIsReported(t *testing.T) {
	s := sheetOf(t, "troubled.csv", nil, exchange.Settled{})
	require.Len(t, s.Rows, 5)
	fields := func(r exchange.SheetRow) (out []column.Field) {
		for _, f := range r.Faults {
			out = append(out, f.Field)
		}
		return out
	}
	assert.Equal(t, []column.Field{column.Size, column.Currency}, fields(s.Rows[0]), "15 of what, and in which money")
	assert.Equal(t, []column.Field{column.Kind, column.Size, column.Strength, column.Price, column.Stock}, fields(s.Rows[2]))
	assert.Equal(t, []column.Field{column.Currency, column.ID}, fields(s.Rows[3]), "the same name again")
	assert.Equal(t, []column.Field{column.Size, column.Currency}, fields(s.Rows[4]))
	assert.True(t, s.AskCurrency)

	settled := exchange.Settled{Currency: "EUR", Cells: map[exchange.Cell]string{}}
	for range 3 { // a remedy may bring up what it hid
		for _, r := range sheetOf(t, "troubled.csv", nil, settled).Rows {
			for _, f := range r.Faults {
				if f.Field == column.Kind {
					settled.Cells[exchange.Cell{Row: r.Number, Field: f.Field}] = "blue curaçao"
					continue
				}
				require.NotEmpty(t, f.Remedies, f.Message)
				settled.Cells[exchange.Cell{Row: r.Number, Field: f.Remedies[0].Field}] = f.Remedies[0].Write
			}
		}
	}
	reading := sheetOf(t, "troubled.csv", nil, settled).Reading()
	assert.Empty(t, reading.Bad, reading.Faults())
	var got []string
	for _, it := range reading.Items {
		got = append(got, inShort(it.(house.Bottle)))
	}
	assert.Equal(t, []string{
		"MIZZEN DRY, london-dry-gin, 150 ml, 18.50 EUR, 40 %, × 2",
		"MIZZEN BITTER, medium-amaro, 700 ml, 24.00 EUR, 28 %, × 1",
		"MIZZEN BLUE, blue-curacao, 700 ml, no price, 55 %, × 0",
		"MIZZEN DRY, london-dry-gin, 1000 ml, 25.00 EUR, 40 %, × 1",
		"MIZZEN WHITE, white-rum, 700 ml, 16.00 EUR, 37.5 %, × 2",
	}, got)
}

// A word that several of a kind are called by is never taken for one of them
// without saying so; a word that one alone is called by is.
func TestClassWordsAreSupposed(t *testing.T) {
	for kind, want := range map[string]struct {
		id       string
		supposed bool
	}{
		"amaro": {"medium-amaro", true}, "Amari": {"medium-amaro", true}, "gin": {"london-dry-gin", true}, "Rum": {"white-rum", true}, "tequila": {"blanco-tequila", true},
		"bitters": {"aromatic-bitters", true}, "port": {"ruby-port", true},
		"bourbon": {"bourbon", false}, "London dry gin": {"london-dry-gin", false}, "maraschino": {"maraschino-liqueur", false}, "Silver tequila": {"blanco-tequila", false}, "light amaro": {"light-orange-amaro", false},
	} {
		s, err := exchange.ReadSheet(strings.NewReader("name,kind,size\nHawse,"+kind+",70cl\n"), shelf(t), nil, exchange.Settled{})
		require.NoError(t, err)
		k := s.Rows[0].Kind
		require.NotNil(t, k.Profile, kind)
		assert.Equal(t, want.id, k.Profile.ID, kind)
		assert.Equal(t, want.supposed, k.Supposed, kind)
		if want.supposed {
			assert.NotEmpty(t, k.Others, kind)
			assert.Contains(t, strings.Join(s.Reading().Notes, "\n"), "taken for "+k.Profile.Name)
		}
	}
	there := []house.Bottle{{ID: "hawse", Name: "Hawse", Ingredient: "alpine-amaro", SizeML: 700}}
	s, err := exchange.ReadSheet(strings.NewReader("name,kind,size\nHawse,amaro,70cl\n"), shelf(t), there, exchange.Settled{})
	require.NoError(t, err)
	assert.Equal(t, "alpine-amaro", s.Rows[0].Bottle.Ingredient, "what was settled once stays")
	assert.False(t, s.Rows[0].Kind.Supposed)
}

// What a bottle has no field for is kept in its note, once.
func TestColumnsWithoutAFieldAreKept(t *testing.T) {
	s := sheetOf(t, "british.csv", nil, exchange.Settled{})
	assert.Equal(t, "back bar, left\nSupplier: Quay & Sons", s.Rows[0].Bottle.Note)
	again := sheetOf(t, "british.csv", []house.Bottle{s.Rows[0].Bottle}, exchange.Settled{})
	assert.Equal(t, s.Rows[0].Bottle, again.Rows[0].Bottle)
	dropped := sheetOf(t, "british.csv", nil, exchange.Settled{Columns: map[int]column.Field{6: column.Nothing}})
	assert.Equal(t, "back bar, left", dropped.Rows[0].Bottle.Note)
}

// Two columns of names are told apart by what they hold, in either order.
func TestKindsAmongNames(t *testing.T) {
	for _, file := range []string{"Item,Bottle,Size\nHawse dry,London dry gin,70cl\nSnubber,Bourbon,1L\n", "Item,Bottle,Size\nLondon dry gin,Hawse dry,70cl\nBourbon,Snubber,1L\n"} {
		s, err := exchange.ReadSheet(strings.NewReader(file), shelf(t), nil, exchange.Settled{})
		require.NoError(t, err)
		require.Empty(t, s.Reading().Bad, s.Reading().Faults())
		assert.Equal(t, "Hawse dry, london-dry-gin, 700 ml, no price, as known, × 1", inShort(s.Rows[0].Bottle))
		assert.Equal(t, "Snubber, bourbon, 1000 ml, no price, as known, × 1", inShort(s.Rows[1].Bottle))
	}
}

// A size that is settled stands before what any column of sizes says.
func TestSettledSizeOverridesItsColumn(t *testing.T) {
	for _, title := range []string{"size_ml", "size_g", "size"} {
		s, err := exchange.ReadSheet(strings.NewReader("name,ingredient,"+title+"\nHawse,bourbon,seven\n"), shelf(t), nil,
			exchange.Settled{Cells: map[exchange.Cell]string{{Row: 2, Field: column.Size}: "70 cl"}})
		require.NoError(t, err)
		require.Empty(t, s.Rows[0].Faults, title)
		assert.Equal(t, 700.0, s.Rows[0].Bottle.SizeML)
	}
}

// An empty cell of the count marks nothing out: what is there keeps its count, what is
// new counts as one as it does without the column, and the sheet says which those are.
func TestCountThatIsNotSaid(t *testing.T) {
	there := []house.Bottle{{ID: "hawse", Name: "Hawse", Ingredient: "bourbon", SizeML: 700, Stock: 3}, {ID: "fairlead", Name: "Fairlead", Ingredient: "vodka", SizeML: 700}}
	for _, c := range []struct {
		title, cell string
		want        []float64 // of one that is there, one that is there and out, and one that is new
		uncounted   bool
	}{
		{",qty", ",", []float64{3, 0, 1}, true},
		{",qty", ",?", []float64{3, 0, 1}, true},
		{"", "", []float64{3, 0, 1}, false},
		{",qty", ",0", []float64{0, 0, 0}, false},
		{",qty", ",out", []float64{0, 0, 0}, false},
		{",qty", ",2", []float64{2, 2, 2}, false},
	} {
		file := "name,kind,size" + c.title + "\nHawse,bourbon,70cl" + c.cell + "\nFairlead,vodka,70cl" + c.cell + "\nSnubber,lemon juice,1L" + c.cell + "\n"
		s, err := exchange.ReadSheet(strings.NewReader(file), shelf(t), there, exchange.Settled{})
		require.NoError(t, err)
		require.Empty(t, s.Reading().Bad)
		for i, want := range c.want {
			assert.Equal(t, want, s.Rows[i].Bottle.Stock, file)
			assert.Equal(t, c.uncounted, s.Rows[i].Uncounted, file)
		}
		assert.Equal(t, c.uncounted, strings.Contains(strings.Join(s.Notes, "\n"), "how many there are of Hawse, Fairlead and Snubber"), s.Notes)
	}
}

// A pack is of bottles where the file says so or holds a pack's worth of them; else
// somebody says whether the count and the price are of packs.
func TestPacks(t *testing.T) {
	for _, c := range []struct {
		file, settled string
		asked         bool
		size, stock   float64
		price         float64
	}{
		{file: "name,ingredient,size,count,price\nKelp,soda water,24 x 200ml,48,0.40", size: 200, stock: 48, price: 0.40},
		{file: "name,ingredient,size,count,bottle cost\nKelp,soda water,24 x 200ml,2,0.40", size: 200, stock: 2, price: 0.40},
		{file: "name,ingredient,size\nKelp,soda water,24 x 200ml", size: 200, stock: 1},
		{file: "name,ingredient,size,count,price\nKelp,soda water,24 x 200ml,2,12", asked: true, size: 200, stock: 2, price: 12},
		{file: "name,ingredient,size,count,price\nKelp,soda water,24 x 200ml,2,12", settled: "of packs", size: 200, stock: 48, price: 0.5},
		{file: "name,ingredient,size,count,price\nKelp,soda water,24 x 200ml,2,12", settled: "of bottles", size: 200, stock: 2, price: 12},
	} {
		read := func(settled exchange.Settled) *exchange.SheetRow {
			settled.Currency = "EUR"
			s, err := exchange.ReadSheet(strings.NewReader(c.file), shelf(t), nil, settled)
			require.NoError(t, err)
			return &s.Rows[0]
		}
		r := read(exchange.Settled{})
		if c.asked || c.settled != "" {
			require.Len(t, r.Faults, 1, c.file)
			assert.Contains(t, r.Faults[0].Message, "a pack of 24")
		} else {
			require.Empty(t, r.Faults, c.file)
		}
		for _, remedy := range r.Faults {
			for _, said := range remedy.Remedies {
				if said.Say == c.settled {
					r = read(exchange.Settled{Cells: map[exchange.Cell]string{{Row: 2, Field: said.Field}: said.Write}})
					require.Empty(t, r.Faults, c.settled)
				}
			}
		}
		assert.Equal(t, c.size, r.Bottle.SizeML, c.file)
		assert.Equal(t, c.stock, r.Bottle.Stock, c.file)
		if c.price > 0 {
			assert.InDelta(t, c.price, *r.Bottle.Price, 1e-9, c.file)
		}
	}
}

// Where a row says in another cell than its size that it is bought in packs, somebody says
// whether its price and its count are of packs.
func TestPacksBesideTheSize(t *testing.T) {
	for _, c := range []struct {
		file         string
		n            int // bottles in a pack; 0 if nothing is asked
		stock, packs float64
	}{
		{file: "Bezeichnung;Inhalt;VE;EK netto\nHawse Bourbon;70cl;6;120,00", n: 6, stock: 1, packs: 1},
		{file: "Artikel;Inhalt;Gebinde;Preis\nHawse Bourbon;70cl;6er Karton;120,00", n: 6, stock: 1, packs: 1},
		{file: "name,size,case,price\nHawse bourbon,70cl,6,120.00", n: 6, stock: 1, packs: 1},
		{file: "name,size,pack size,price\nHawse bourbon,70cl,6,120.00", n: 6, stock: 1, packs: 1},
		{file: "name,size,units per case,price,count\nHawse bourbon,70cl,6,120.00,2", n: 6, stock: 2, packs: 12},
		{file: "name,size,qty per carton,price,count\nHawse bourbon,70cl,12,120.00,24", n: 12, stock: 24, packs: 24},
		{file: "name,size,colli,price\nHawse bourbon,70cl,6,120.00", n: 6, stock: 1, packs: 1},
		{file: "name,size,price,note\nHawse bourbon,70cl,120.00,Karton 6x", n: 6, stock: 1, packs: 1},
		{file: "name,size,price,note\nHawse bourbon,70cl,120.00,sold by the case of 6", n: 6, stock: 1, packs: 1},
		{file: "name,size,price,note\nHawse bourbon,70cl,120.00,12 bottles per case", n: 12, stock: 1, packs: 1},
		{file: "name,size,price\nHawse bourbon (6-pack),70cl,120.00", n: 6, stock: 1, packs: 1},
		{file: "name,size,price\nHawse bourbon 6x70cl,70cl,120.00", n: 6, stock: 1, packs: 1},
		{file: "name,size,case,count\nHawse bourbon,70cl,6,2", n: 6, stock: 2, packs: 12},

		{file: "name,size,case,price\nHawse bourbon,70cl,1,20.00", stock: 1},
		{file: "name,size,case,count\nHawse bourbon,70cl,6,8", stock: 8},
		{file: "name,size,case,bottle cost\nHawse bourbon,70cl,6,20.00", stock: 1},
		{file: "name,size,case price,price\nHawse bourbon,70cl,120,20.00", stock: 1},
		{file: "name,size,cases on hand,price,count\nHawse bourbon,70cl,2,20.00,12", stock: 12},
		{file: "name,size,price,shelf,note\nHawse bourbon,70cl,20.00,12,aged 6 years in a cask no 4", stock: 1},
		{file: "name,size,case\nHawse bourbon,70cl,6", stock: 1},
	} {
		read := func(cells map[exchange.Cell]string) *exchange.SheetRow {
			s, err := exchange.ReadSheet(strings.NewReader(c.file), shelf(t), nil, exchange.Settled{Currency: "EUR", Cells: cells})
			require.NoError(t, err, c.file)
			return &s.Rows[0]
		}
		r := read(nil)
		if c.n == 0 {
			assert.Empty(t, r.Faults, c.file)
			assert.Equal(t, c.stock, r.Bottle.Stock, c.file)
			continue
		}
		if !assert.Len(t, r.Faults, 1, c.file) || !assert.Len(t, r.Faults[0].Remedies, 2, c.file) {
			continue
		}
		assert.Contains(t, r.Faults[0].Message, fmt.Sprintf("packs of %d", c.n), c.file)
		for i, want := range []struct{ stock, share float64 }{{c.stock, 1}, {c.packs, float64(c.n)}} {
			said := r.Faults[0].Remedies[i]
			got := read(map[exchange.Cell]string{{Row: 2, Field: said.Field}: said.Write})
			assert.Empty(t, got.Faults, "%s: %s", c.file, said.Say)
			assert.Equal(t, 700.0, got.Bottle.SizeML, "%s: %s", c.file, said.Say)
			assert.Equal(t, want.stock, got.Bottle.Stock, "%s: %s", c.file, said.Say)
			if got.Bottle.Price != nil {
				assert.InDelta(t, 120/want.share, *got.Bottle.Price, 1e-9, "%s: %s", c.file, said.Say)
			}
		}
	}
}

func TestSharedCurrency(t *testing.T) {
	const file = "name,kind,size,cost\nHawse,bourbon,70cl,$30\nSnubber,vodka,70cl,20\n"
	read := func(there []house.Bottle, settled exchange.Settled) []string {
		s, err := exchange.ReadSheet(strings.NewReader(file), shelf(t), there, settled)
		require.NoError(t, err)
		return []string{s.Rows[0].Bottle.Currency, s.Rows[1].Bottle.Currency}
	}
	price := 1.0
	assert.Equal(t, []string{"USD", "USD"}, read(nil, exchange.Settled{}))
	assert.Equal(t, []string{"CAD", "CAD"}, read(nil, exchange.Settled{Currency: "CAD"}), "the dollar of the house")
	assert.Equal(t, []string{"AUD", "AUD"}, read([]house.Bottle{{ID: "x", Price: &price, Currency: "AUD"}}, exchange.Settled{}))
}

// Prices that name no currency are in that of the house, unless the file's own signs
// say another.
func TestCurrencyOfTheHouse(t *testing.T) {
	for _, c := range []struct{ house, price, want string }{
		{"AUD", "18.50", "AUD"}, {"AUD", "$18.50", "AUD"}, {"AUD", "€18.50", "EUR"}, {"EUR", "$18.50", "USD"}, {"NOK", "kr 180", "NOK"}, {"", "$18.50", "USD"},
	} {
		s, err := exchange.ReadSheet(strings.NewReader("name,ingredient,size,price\nHawse,bourbon,70cl,"+c.price+"\n"), shelf(t), nil, exchange.Settled{House: c.house})
		require.NoError(t, err)
		require.Empty(t, s.Rows[0].Faults, c)
		assert.Equal(t, c.want, s.Rows[0].Bottle.Currency, c)
	}
}

// Any row that is not good may be left out: one whose kind nobody knows, one that is
// there twice, and one that cannot be parsed.
func TestAnyBadRowMayBeLeftOut(t *testing.T) {
	const file = "name,kind,size\nHawse,zorble,70cl\nSnubber,vodka,70cl\nSnubber,vodka,70cl\nCleat,vodka,70cl,more,still\nOakum,bourbon,70cl\n"
	settled := exchange.Settled{Cells: map[exchange.Cell]string{}}
	read := func() *exchange.Sheet {
		s, err := exchange.ReadSheet(strings.NewReader(file), shelf(t), nil, settled)
		require.NoError(t, err)
		return s
	}
	require.Len(t, read().Reading().Bad, 3)
	for _, bad := range read().Reading().Bad {
		settled.Cells[exchange.Cell{Row: bad.Number, Field: column.Row}] = exchange.LeaveOut
	}
	reading := read().Reading()
	assert.Empty(t, reading.Bad, reading.Faults())
	assert.Empty(t, reading.Rest())
	var got []string
	for _, it := range reading.Items {
		got = append(got, it.Ref().ID)
	}
	assert.Equal(t, []string{"snubber", "oakum"}, got)
}

// Bottles in two currencies are named before they are taken in, those of the house
// counted, since no drink can be costed after it.
func TestTwoCurrenciesAreSaidBefore(t *testing.T) {
	price := 9.0
	kept := []house.Bottle{{ID: "oakum", Name: "Oakum", Ingredient: "rye-whiskey", SizeML: 700, Price: &price, Currency: "USD"}}
	for _, c := range []struct {
		rows  string
		there []house.Bottle
		want  string
	}{
		{"Hawse,vodka,70cl,$9\nCleat,bourbon,70cl,$9\nPitch,fernet,70cl,€9\n", nil, "Pitch is priced in EUR, the other bottles in USD"},
		{"Pitch,fernet,70cl,€9\nHawse,vodka,70cl,9\n", kept, "Pitch is priced in EUR, the other bottles in USD"},
		{"Oakum,rye,70cl,€9\n", kept, ""}, // it takes the place of the one in dollars
		{"Hawse,vodka,70cl,$9\nCleat,bourbon,70cl,\n", kept, ""},
	} {
		s, err := exchange.ReadSheet(strings.NewReader("name,kind,size,price\n"+c.rows), shelf(t), c.there, exchange.Settled{Currency: "USD"})
		require.NoError(t, err)
		require.Empty(t, s.Reading().Bad, c.rows)
		if notes := strings.Join(s.Notes, "\n"); c.want == "" {
			assert.NotContains(t, notes, "priced in")
		} else {
			assert.Contains(t, notes, c.want)
		}
	}
}

// The sign of another currency than that of the house keeps its currency, and is said: a sum of
// dollars is none of euros. A dollar of another country shares the sign.
func TestASignOfAnotherCurrencyIsSaid(t *testing.T) {
	price := 9.0
	for _, c := range []struct{ house, written, want string }{
		{"EUR", "$18.50", "USD"}, {"EUR", "£18.50", "GBP"}, {"EUR", "¥1850", "JPY"}, {"EUR", "185 kr", "SEK"}, {"EUR", "€18.50", ""}, {"EUR", "18.50", ""},
		{"CAD", "$18.50", ""}, {"USD", "$18.50", ""}, {"MXN", "$185.00", ""}, {"NOK", "185 kr", ""},
	} {
		kept := []house.Bottle{{ID: "oakum", Name: "Oakum", Ingredient: "rye-whiskey", SizeML: 700, Price: &price, Currency: c.house}, {ID: "cleat", Name: "Cleat", Ingredient: "bourbon", SizeML: 700, Price: &price, Currency: c.house}}
		for _, settled := range []exchange.Settled{{}, {House: c.house}, {Currency: c.house}} {
			s, err := exchange.ReadSheet(strings.NewReader("name;kind;size;price\nHawse;vodka;70cl;"+c.written+"\n"), shelf(t), kept, settled)
			require.NoError(t, err)
			require.Empty(t, s.Rows[0].Faults, c.written)
			notes := strings.Join(s.Notes, "\n")
			if c.want == "" {
				assert.Equal(t, c.house, s.Rows[0].Bottle.Currency, c.written)
				assert.NotContains(t, notes, "priced in", c.written)
				continue
			}
			assert.Equal(t, c.want, s.Rows[0].Bottle.Currency, "%s in %s", c.written, c.house)
			assert.Contains(t, notes, "Hawse is priced in "+c.want+", the other bottles in "+c.house)
		}
	}
}

// Size and strength outweigh the word bitter: what is of an aperitif is asked about, and is no
// cocktail bitters until somebody says so. Common practice, no source.
func TestABottleOfBitterIsAskedAbout(t *testing.T) {
	for _, c := range []struct {
		row   string
		asked bool
	}{
		{"Hawse,Bitter,70cl,25%", true}, {"Hawse,Bitter,70cl,", true}, {"Hawse,bitter,35cl,28%", true}, {"Hawse,bitter,20cl,24%", true}, {"Hawse Bitter,,1L,25%", true},
		{"Hawse,bitters,70cl,25%", true}, {"Hawse,Bitter,20cl,44%", false}, {"Hawse,bitters,16oz,", false}, {"Hawse,aromatic bitters,16oz,44.7%", false}, {"Hawse,aromatic bitters,70cl,", false},
		{"Hawse,orange bitters,10cl,28%", false}, {"Hawse,red bitter aperitif,70cl,25%", false},
	} {
		csv := "name,kind,size,abv\n" + c.row + "\n"
		s, err := exchange.ReadSheet(strings.NewReader(csv), shelf(t), nil, exchange.Settled{})
		require.NoError(t, err)
		r := s.Rows[0]
		if !c.asked {
			assert.Empty(t, r.Faults, c.row)
			assert.NotNil(t, r.Kind.Profile, c.row)
			continue
		}
		require.Len(t, r.Faults, 1, c.row)
		assert.Nil(t, r.Kind.Profile, c.row)
		var offered []string
		for _, remedy := range r.Faults[0].Remedies {
			offered = append(offered, remedy.Write)
		}
		assert.Contains(t, offered, "red bitter aperitif", c.row)
		for _, name := range offered {
			s, err = exchange.ReadSheet(strings.NewReader(csv), shelf(t), nil, exchange.Settled{Cells: map[exchange.Cell]string{{Row: r.Number, Field: column.Kind}: name}})
			require.NoError(t, err)
			assert.Empty(t, s.Rows[0].Faults, "%s as %s", c.row, name)
			assert.Equal(t, name, s.Rows[0].Kind.Profile.Name, "what is said stands")
		}
	}
}

func TestFiguresAsWritten(t *testing.T) {
	for written, want := range map[string]string{ // sizes: of the trade's units; common practice, no source
		"70cl": "700 ml", "0.7 L": "700 ml", "0,7l": "700 ml", "750ml": "750 ml", "750 mL btl": "750 ml", "1L": "1000 ml", "1 Ltr": "1000 ml", "1.75L": "1750 ml", "700": "700 ml", "1": "1000 ml",
		"10oz": "295.735 ml", "12 fl. oz.": "354.882 ml", "6 x 70cl": "700 ml", "24x200ml": "200 ml", "½ gal": "1892.706 ml", "1 qt": "946.353 ml", "500g": "500 g", "1 kg": "1000 g", "2 lbs": "907.184 g",
	} {
		s, err := exchange.ReadSheet(strings.NewReader("name;kind;size\nHawse;bourbon;"+written+"\n"), shelf(t), nil, exchange.Settled{})
		require.NoError(t, err)
		require.Empty(t, s.Rows[0].Faults, written)
		assert.Equal(t, want, strings.Split(inShort(s.Rows[0].Bottle), ", ")[2], written)
	}
	for written, want := range map[string]string{"$18.50": "18.50 USD", "18.50 USD": "18.50 USD", "€1.024,50": "1024.50 EUR", "£1,024.50": "1024.50 GBP", "18,50 €": "18.50 EUR", "EUR 18.-": "18.00 EUR",
		"C$18": "18.00 CAD", "£18.50/btl": "18.50 GBP", "£18.50 each": "18.50 GBP", "1 024,50 zł": "1024.50 PLN", "n/a": "no price"} {
		s, err := exchange.ReadSheet(strings.NewReader("name;kind;size;cost\nHawse;bourbon;70cl;"+written+"\n"), shelf(t), nil, exchange.Settled{})
		require.NoError(t, err)
		require.Empty(t, s.Rows[0].Faults, written)
		assert.Equal(t, want, strings.Split(inShort(s.Rows[0].Bottle), ", ")[3], written)
	}
}

// A list under titles in German, French, Spanish or Italian reads as one in English.
func TestTitlesOfOtherLanguages(t *testing.T) {
	for _, file := range []string{
		"Artikel;Kategorie;Inhalt;EK;Alkohol %;Bestand\nHafen Gin;gin;0,7 l;19,90 EUR;42;6\n",
		"Désignation;Catégorie;Contenance;Prix d'achat;Degré;Quantité\nHafen Gin;gin;70 cl;19,90 EUR;42;6\n",
		"Artículo;Categoría;Contenido;Precio;Alcohol;Cantidad\nHafen Gin;gin;70 cl;19,90 EUR;42;6\n",
		"Articolo;Categoria;Contenuto;Prezzo;Gradazione;Giacenza\nHafen Gin;gin;70 cl;19,90 EUR;42;6\n",
	} {
		r, err := readStock(strings.NewReader(file), shelf(t))
		require.NoError(t, err, file)
		require.Empty(t, r.Bad, file)
		require.Len(t, r.Items, 1, file)
		b, is := r.Items[0].(house.Bottle)
		require.True(t, is)
		assert.Equal(t, "Hafen Gin", b.Name, file)
		assert.Equal(t, 700.0, b.SizeML, file)
		assert.Equal(t, 6.0, b.Stock, file)
		require.NotNil(t, b.Price, file)
		assert.Equal(t, 19.9, *b.Price, file)
		require.NotNil(t, b.ABVPct, file)
		assert.Equal(t, 42.0, *b.ABVPct, file)
	}
}

// Lines without columns are read as they are written; what is no bottle is asked about, and
// a text with columns keeps them.
func TestPlainLines(t *testing.T) {
	const lines = "6 x Hawse London dry gin 70cl 18.50\n2 bottles of Snubber bourbon 1 L @ £24.00 ea\n\nLondon dry gin 70 cl 19,90\nwhite rum 750ml €16.00\nlime juice\nHawse 70cl 12.00\n2 cs Hawse 0.7L 17.95 ea\n"
	s, err := exchange.ReadSheet(strings.NewReader(lines), shelf(t), nil, exchange.Settled{Currency: "EUR"})
	require.NoError(t, err)
	var got []string
	for _, r := range s.Rows[:4] {
		assert.Empty(t, r.Faults, r.Bottle.Name)
		got = append(got, inShort(r.Bottle))
	}
	assert.Equal(t, []string{
		"Hawse London dry gin, london-dry-gin, 700 ml, 18.50 EUR, as known, × 6",
		"Snubber bourbon, bourbon, 1000 ml, 24.00 GBP, as known, × 2",
		"London dry gin, london-dry-gin, 700 ml, 19.90 EUR, as known, × 1",
		"white rum, white-rum, 750 ml, 16.00 EUR, as known, × 1",
	}, got)
	assert.Equal(t, 4, s.Rows[2].Number, "as the line stands in the text")
	require.Len(t, s.Rows, 7)
	assert.Equal(t, "lime-juice", s.Rows[4].Bottle.Ingredient, "a bottle and no heading")
	require.NotEmpty(t, s.Rows[5].Faults)
	assert.Equal(t, column.Kind, s.Rows[5].Faults[0].Field)
	assert.Equal(t, "2 cs Hawse, , 700 ml, 17.95 EUR, as known, × 1", inShort(s.Rows[6].Bottle), "what is no count stays in the name, to be seen")

	s, err = exchange.ReadSheet(strings.NewReader("bourbon 70cl - none\nwhite rum 70cl 0 btl\nLondon dry gin 70cl x 2 19.00\nlime juice 1L 3 bottles 4,90\n"), shelf(t), nil, exchange.Settled{Currency: "EUR"})
	require.NoError(t, err)
	got = nil
	for _, r := range s.Rows {
		got = append(got, inShort(r.Bottle))
	}
	assert.Equal(t, []string{
		"bourbon, bourbon, 700 ml, no price, as known, × 0",
		"white rum, white-rum, 700 ml, no price, as known, × 0",
		"London dry gin, london-dry-gin, 700 ml, 19.00 EUR, as known, × 2",
		"lime juice, lime-juice, 1000 ml, 4.90 EUR, as known, × 3",
	}, got, "how many there are may stand behind the size")

	s, err = exchange.ReadSheet(strings.NewReader("bourbon 3x70cl @ 24\nwhite rum 2 x 1 L\nLondon dry gin 70cl €19\nvodka 70cl x 2 @ 16,50\n6 x bourbon 3x70cl @ 24\n"), shelf(t), nil, exchange.Settled{Currency: "EUR"})
	require.NoError(t, err)
	got = nil
	for _, r := range s.Rows[:4] {
		assert.Empty(t, r.Faults, r.Bottle.Name)
		got = append(got, inShort(r.Bottle))
	}
	assert.Equal(t, []string{
		"bourbon, bourbon, 700 ml, 24.00 EUR, as known, × 3",
		"white rum, white-rum, 1000 ml, no price, as known, × 2",
		"London dry gin, london-dry-gin, 700 ml, 19.00 EUR, as known, × 1",
		"vodka, vodka, 700 ml, 16.50 EUR, as known, × 2",
	}, got, "count, size and price stand at the end of a line, a whole price behind its sign")
	assert.Equal(t, "bourbon 3x70cl @ 24, bourbon, 700 ml, no price, as known, × 6", inShort(s.Rows[4].Bottle), "how many there are, said twice, stays in the name")

	s, err = exchange.ReadSheet(strings.NewReader("bourbon 6x70cl 120.00\n"), shelf(t), nil, exchange.Settled{Currency: "EUR"})
	require.NoError(t, err)
	assert.NotEmpty(t, s.Rows[0].Faults, "a price behind a pack may be that of the pack")

	s, err = exchange.ReadSheet(strings.NewReader("6 x Hawse, London dry gin, 70cl\n1 x Snubber, bourbon, 1 L\n"), shelf(t), nil, exchange.Settled{})
	require.NoError(t, err)
	assert.Greater(t, len(s.Columns), 1)
}
