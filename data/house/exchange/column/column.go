// Package column knows which field of a bottle a column of a stock list holds: by its title, in
// the words of the trade and of several languages, or by its cells.
package column

import (
	"slices"
	"strings"
	"sync"

	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/flavor/measure/pattern"
)

// Field is what a column of a stock file holds.
type Field string

// Fields of a bottle that a column may hold. Other columns that are worth keeping go into
// the note, under their title.
const (
	Name        Field = "name"
	Kind        Field = "ingredient" // the ingredient, by name or id
	Group       Field = "group"      // a wider term for it, which narrows the search
	Size        Field = "size"       // with a unit, or with one in the title
	SizeML      Field = "size_ml"
	SizeG       Field = "size_g"
	Strength    Field = "abv_pct"
	Price       Field = "price"
	Currency    Field = "currency"
	Stock       Field = "stock"
	Par         Field = "par" // how many to order up to
	Note        Field = "note"
	Beside      Field = "beside" // kept in the note, under its title
	Nothing     Field = "nothing"
	ID          Field = "id"
	Well        Field = "well"
	Unread      Field = "unread"
	Brix        Field = "brix"
	Sugar       Field = "sugar_g_per_l"
	Acid        Field = "acid_g_per_l"
	Contains    Field = "label_contains"
	MayContain  Field = "label_may_contain"
	Vegan       Field = "label_vegan"
	LabelReader Field = "label_read_by"
	LabelRead   Field = "label_read_at"
	Out         Field = "out_since" // when it ran out while others of its ingredient were left
	Words       Field = "words"     // the house's own words for its ingredient
	Row         Field = "row"       // for a fault of the whole row; [LeaveOut] settles it
)

const (
	maxSamples   = 3   // cells shown as examples of a column
	MaxHeadRows  = 15  // rows before the titles, such as a name and a date
	contentShare = 0.5 // share of cells that must parse before an untitled column is assigned a field
	leastTitles  = 2   // known titles that make a row the row of titles
)

// Fields lists the fields that a column may be assigned to, the most usual first.
func Fields() []Field {
	return []Field{Name, Kind, Group, Size, Price, Currency, Stock, Par, Strength, Note, Beside, Nothing,
		ID, Well, SizeML, SizeG, Brix, Sugar, Acid, Contains, MayContain, Vegan, LabelReader, LabelRead, Unread, Out, Words}
}

// Column is a column of a stock file and the field that it is read as.
type Column struct {
	Title   string // as written; empty if the file has no titles
	Field   Field
	Samples []string // its first non-empty cells
	Unit    string   // of bare numbers, from the title; pct for per cent
}

// titles are usual column titles of stock lists, for each field, the most specific first.
// Common practice, no source.
var titles = []struct {
	field Field
	words []string
}{
	{Name, []string{"name", "item", "item name", "product", "product name", "bottle name", "brand", "item description", "product description", "description", "label", "stock item", "article", "bottle"}},
	{Kind, []string{"ingredient", "kind", "subcategory", "sub category", "style", "type", "spirit type", "product type", "category", "class", "family", "varietal", "spirit", "liquor"}},
	{Group, []string{"group", "section", "department", "main category"}},
	{Size, []string{"size", "bottle size", "btl size", "unit size", "volume", "vol", "format", "content", "capacity", "pack size", "ml", "cl", "measure", "bottle volume", "net content", "uom", "unit"}},
	{Price, []string{"price", "cost", "bottle cost", "btl cost", "unit cost", "cost per bottle", "cost per btl", "cost btl", "cost each", "unit price", "bottle price", "price per bottle", "last cost", "net price", "buy price", "purchase price", "wholesale", "cost price", "price each", "each"}},
	{Currency, []string{"currency", "cur", "ccy"}},
	{Stock, []string{"on hand", "onhand", "stock", "in stock", "quantity", "qty", "count", "inventory", "current", "current stock", "on shelf", "have", "qty on hand", "quantity on hand", "qoh", "soh", "stock on hand", "bottle on hand", "balance", "closing stock", "closing", "total on hand", "total bottle", "total"}},
	{Par, []string{"par", "par level", "par stock", "order up to", "target stock", "sollbestand"}},
	{Strength, []string{"abv pct", "abv", "alcohol", "strength", "alc", "pct vol", "vol pct", "pct abv", "alcohol pct", "alc pct", "alc vol", "alc by vol", "proof"}},
	{Note, []string{"note", "comment", "remark", "memo"}},
	{ID, []string{"id"}},
	{Unread, []string{"label unread", "unread"}},
	{Well, []string{"well", "house pour", "rail", "speed rail"}},
	{SizeML, []string{"size ml"}},
	{SizeG, []string{"size g", "weight", "weight g", "net weight"}},
	{Brix, []string{"brix", "bx"}},
	{Sugar, []string{"sugar g per l", "sugar", "sugar g l"}},
	{Acid, []string{"acid g per l", "acid", "acid g l"}},
	{Contains, []string{"label contain", "allergen", "contain"}},
	{MayContain, []string{"label may contain", "may contain", "trace"}},
	{Vegan, []string{"label vegan", "vegan"}},
	{LabelReader, []string{"label read by", "read by"}},
	{LabelRead, []string{"label read at", "read at", "label date", "date read"}},
	{Out, []string{"out since"}},
	{Words, []string{"word", "house word", "own word", "also called"}},
	{Nothing, []string{"value", "total value", "total cost", "stock value", "extended", "extension", "ext cost", "row", "no", "line", "variance", "usage"}},
	{Beside, []string{"par", "par level", "min", "minimum", "reorder", "reorder point", "order", "to order", "order qty", "supplier", "vendor", "distributor", "distro", "wholesaler", "location", "shelf", "bin", "area", "where", "sku", "code", "item code", "product code", "barcode", "upc", "ean", "origin", "country", "region", "vintage", "year", "case", "case size", "case cost", "case price", "pack", "retail", "sell price", "menu price", "producer", "maker"}},
}

// foreignTitles are the usual titles of stock lists in German, French, Spanish and Italian.
// Common practice, no source.
var foreignTitles = []struct {
	field Field
	words []string
}{
	{Name, []string{"artikel", "bezeichnung", "artikelbezeichnung", "produkt", "flasche", "marke", "désignation", "article", "produit", "bouteille", "marque", "artículo", "producto", "nombre", "botella", "marca", "articolo", "prodotto", "nome", "bottiglia", "descrizione"}},
	{Kind, []string{"kategorie", "sorte", "art", "catégorie", "famille", "categoría", "tipo", "categoria"}},
	{Group, []string{"warengruppe", "gruppe", "groupe", "rayon", "grupo", "gruppo"}},
	{Size, []string{"inhalt", "größe", "grösse", "gebinde", "volumen", "flaschengröße", "contenance", "taille", "contenido", "tamaño", "capacidad", "contenuto", "formato", "capacità"}},
	{Price, []string{"preis", "ek", "ek preis", "einkaufspreis", "ek netto", "netto ek", "nettopreis", "stückpreis", "prix", "prix achat", "prix d achat", "prix ht", "prix unitaire", "coût", "precio", "precio compra", "coste", "costo", "prezzo", "prezzo unitario", "prezzo acquisto"}},
	{Currency, []string{"währung", "devise", "moneda", "divisa", "valuta"}},
	{Stock, []string{"bestand", "lagerbestand", "vorrat", "menge", "anzahl", "stück", "quantité", "qté", "cantidad", "existencia", "unidad", "quantità", "giacenza", "pezzo"}},
	{Strength, []string{"alkohol", "alkoholgehalt", "vol prozent", "degré", "alcool", "titre alcoométrique", "alcohol vol", "graduación", "gradazione"}},
	{Note, []string{"bemerkung", "notiz", "hinweis", "remarque", "nota"}},
	{Contains, []string{"allergene", "allergène", "alérgeno", "allergeni"}},
	{Beside, []string{"lieferant", "lagerort", "regal", "artikelnummer", "artikel nr", "mindestbestand", "fournisseur", "emplacement", "référence", "proveedor", "ubicación", "fornitore", "scaffale"}},
}

// titleHints classify a title that is not in the list above by one of its words, in this
// order. A title about cases or sales is not the price of a bottle.
var titleHints = []struct {
	word  string
	field Field
}{
	{"sell", Beside}, {"retail", Beside}, {"menu", Beside}, {"case", Beside}, {"par", Beside}, {"reorder", Beside},
	{"supplier", Beside}, {"vendor", Beside}, {"distributor", Beside}, {"location", Beside}, {"code", Beside}, {"value", Nothing},
	{"cost", Price}, {"price", Price}, {"hand", Stock}, {"stock", Stock}, {"qty", Stock}, {"quantity", Stock}, {"count", Stock}, {"inventory", Stock},
	{"size", Size}, {"volume", Size}, {"abv", Strength}, {"proof", Strength}, {"alcohol", Strength},
	{"allergen", Contains}, {"category", Kind}, {"type", Kind}, {"kind", Kind}, {"style", Kind},
	{"note", Note}, {"comment", Note}, {"product", Name}, {"item", Name}, {"name", Name}, {"bottle", Name}, {"description", Name},
}

// titleUnits are units that a title may state for the numbers below it.
var titleUnits = map[string]string{"ml": "ml", "cl": "cl", "l": "l", "litre": "l", "liter": "l", "oz": "oz", "floz": "oz", "g": "g", "kg": "kg", "proof": "proof", "pct": "pct"}

var notInTitle = pattern.Of(`[^\p{L}\p{N}]+`)

// signsInTitle are the words that signs in a title stand for.
var signsInTitle = strings.NewReplacer("%", " pct ", "#", " no ", "$", " ", "€", " ", "£", " ", "_", " ")

// titleKey returns a title in the form that the lists use.
func titleKey(title string) string {
	title = signsInTitle.Replace(strings.ToLower(title))
	return flavor.NormaliseName(notInTitle.ReplaceAllString(title, " "))
}

// foreignTitle is the field that a title in another language stands for, and its place
// among the titles of that field.
type foreignTitle struct {
	field Field
	rank  int
}

// foreignKeys are the foreign titles by their keys. Of two alike the first stays.
var foreignKeys = sync.OnceValue(func() map[string]foreignTitle {
	out := map[string]foreignTitle{}
	for _, t := range foreignTitles {
		for i, w := range t.words {
			key := titleKey(w)
			if _, known := out[key]; !known && key != "" {
				out[key] = foreignTitle{t.field, i}
			}
		}
	}
	return out
})

// fieldOfTitle returns the field that a title stands for, its rank (lower is more
// certain) and the unit that it states. An unknown title has no field.
func fieldOfTitle(title string) (field Field, rank int, unit string) {
	key := titleKey(title)
	for _, w := range strings.Fields(key) {
		if u, ok := titleUnits[w]; ok {
			unit = u
		}
	}
	for _, k := range []string{key, withoutUnit(key)} {
		for _, t := range titles {
			if at := slices.Index(t.words, k); k != "" && at >= 0 {
				return t.field, at, unit
			}
		}
		if t, ok := foreignKeys()[k]; ok {
			return t.field, t.rank, unit
		}
	}
	words := strings.Fields(key)
	for i, h := range titleHints {
		if slices.Contains(words, h.word) {
			return h.field, 100 + i, unit
		}
	}
	return "", 0, unit
}

func withoutUnit(key string) string {
	words := slices.DeleteFunc(strings.Fields(key), func(w string) bool {
		_, unit := titleUnits[w]
		return unit || w == "pct" || w == "in" || len(w) == 3 && numeral.KnownCurrency(strings.ToUpper(w))
	})
	return strings.Join(words, " ")
}

// HeadRow returns the index of the row of titles: the one with the most known titles
// among the first rows; -1 if there is none.
func HeadRow(rows []grid.Row) int {
	best, most := -1, leastTitles-1
	for i := range rows[:min(len(rows), MaxHeadRows)] {
		known, named := 0, false
		if i == 0 && !hasDigit(rows[i].Raw) {
			known++ // a first row of only words is probably the titles
		}
		for _, cell := range rows[i].Cells {
			field, _, _ := fieldOfTitle(cell)
			if field != "" && !hasDigit(cell) {
				known++
			}
			named = named || field == Name || field == Kind
		}
		if known > most && (named || known > leastTitles) {
			best, most = i, known
		}
	}
	if best < 0 && len(rows) > 1 && standsOver(rows[0], rows[1:]) {
		return 0
	}
	return best
}

// standsOver reports whether a row of words stands above a column of numbers. Such a row
// holds titles, in whatever language.
func standsOver(first grid.Row, rows []grid.Row) bool {
	if hasDigit(first.Raw) {
		return false
	}
	for i, cell := range first.Cells {
		if grid.HasWords(cell) && grid.ShareOf(grid.Column(rows, i), hasDigit) > contentShare {
			return true
		}
	}
	return false
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// Of assigns a field to every column, by its title or its content. If two columns
// claim a field, the more certain one gets it and the other goes into the note.
func Of(head []string, rows []grid.Row, known func(string) bool) []Column {
	width := len(head)
	if head == nil {
		for _, r := range rows {
			width = max(width, len(r.Cells))
		}
	}
	columns := make([]Column, width)
	ranks := make([]int, width)
	for i := range columns {
		c := &columns[i]
		cells := grid.Column(rows, i)
		c.Samples = cells[:min(len(cells), maxSamples)]
		if i < len(head) {
			c.Title = strings.Join(strings.Fields(grid.Unguard(head[i])), " ")
			c.Field, ranks[i], c.Unit = fieldOfTitle(c.Title)
		}
		if c.Field == Size && c.Unit == "" || c.Field == Name && ranks[i] > 0 || c.Field == Stock {
			c.Field = byContent(c.Field, cells)
		}
	}
	kindAmongNames(columns, ranks, rows, known)
	settleTies(columns, ranks)
	guessColumns(columns, rows, head != nil, known)
	for i := range columns {
		switch c := &columns[i]; {
		case c.Field == "" && len(c.Samples) == 0:
			c.Field = Nothing
		case c.Field == "":
			c.Field = Beside
		}
	}
	return columns
}

// byContent corrects an ambiguous title by the cells: "Bottle" above sizes, "Unit" above
// words, "Total" above sums of money.
func byContent(field Field, cells []string) Field {
	sizes := grid.ShareOf(cells, numeral.LooksLikeSize)
	switch {
	case field == Name && sizes >= contentShare:
		return Size
	case field == Size && len(cells) > 0 && grid.ShareOf(cells, func(s string) bool { return numeral.LooksLikeSize(s) || hasDigit(s) }) == 0:
		return Beside
	case field == Stock && grid.ShareOf(cells, numeral.LooksLikeMoney) >= contentShare:
		return Nothing
	}
	return field
}

// guessColumns assigns fields to columns without a known title, by their content. Bare
// numbers are guessed only in a file without titles.
func guessColumns(columns []Column, rows []grid.Row, titled bool, known func(string) bool) {
	taken := map[Field]bool{}
	for _, c := range columns {
		taken[c.Field] = true
	}
	take := func(i int, f Field) bool {
		if columns[i].Field != "" || taken[f] {
			return false
		}
		columns[i].Field, taken[f] = f, true
		return true
	}
	taken[Size] = taken[Size] || taken[SizeML] || taken[SizeG]
	isNumber := func(s string) bool { _, ok := numeral.Number(s, false); return ok }
	for _, guess := range []struct {
		field Field
		is    func(string) bool
	}{{Size, numeral.LooksLikeSize}, {Strength, numeral.LooksLikeShare}, {Price, numeral.LooksLikeMoney}, {Price, numeral.HasCents}, {Kind, known},
		{Stock, func(s string) bool { return !titled && isNumber(s) }}, {Name, func(s string) bool { return !isNumber(s) && grid.HasWords(s) }}} {
		for i := range columns {
			if cells := grid.Column(rows, i); grid.ShareOf(cells, guess.is) >= contentShare && take(i, guess.field) {
				break
			}
		}
	}
	// If there is one column of words, it holds the names, even if those name ingredients
	// too.
	if !taken[Name] {
		for i := range columns {
			if columns[i].Field == Kind && columns[i].Title == "" {
				columns[i].Field = Name
			}
		}
	}
}

// kindAmongNames tells two columns of names apart, such as Item and Bottle: the one in
// which most cells name an ingredient is Kind, unless a title says so.
func kindAmongNames(columns []Column, ranks []int, rows []grid.Row, known func(string) bool) {
	best, most, names := -1, 0.0, 0
	for i, c := range columns {
		switch c.Field {
		case Kind:
			return
		case Name:
			names++
			if share := grid.ShareOf(grid.Column(rows, i), known); share >= contentShare && share > most {
				best, most = i, share
			}
		}
	}
	if names > 1 && best >= 0 {
		columns[best].Field, ranks[best] = Kind, 0
	}
}

// settleTies leaves each field except the note to one column.
func settleTies(columns []Column, ranks []int) {
	best := map[Field]int{}
	for i, c := range columns {
		switch c.Field {
		case "", Beside, Nothing:
			continue
		}
		at, there := best[c.Field]
		switch {
		case !there:
			best[c.Field] = i
			continue
		case ranks[i] < ranks[at]:
			best[c.Field] = i
			at, i = i, at
		}
		columns[i].Field = spare(columns, c.Field, best, i)
	}
}

// spare returns what a second column of the same field becomes: a less specific column of
// ingredients becomes the group, a second column of names often holds ingredients, and
// any other goes into the note.
func spare(columns []Column, f Field, best map[Field]int, i int) Field {
	_, grouped := best[Group]
	if f == Kind && !grouped && !slices.ContainsFunc(columns, func(c Column) bool { return c.Field == Group }) {
		best[Group] = i
		return Group
	}
	return Beside
}
