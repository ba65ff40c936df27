package exchange

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
)

// Field is what a column of a stock file holds.
type Field string

// Fields of a bottle that a column may hold. Other columns that are worth keeping go into
// the note, under their title.
const (
	FieldName        Field = "name"
	FieldKind        Field = "ingredient" // the ingredient, by name or id
	FieldGroup       Field = "group"      // a wider term for it, which narrows the search
	FieldSize        Field = "size"       // with a unit, or with one in the title
	FieldSizeML      Field = "size_ml"
	FieldSizeG       Field = "size_g"
	FieldStrength    Field = "abv_pct"
	FieldPrice       Field = "price"
	FieldCurrency    Field = "currency"
	FieldStock       Field = "stock"
	FieldNote        Field = "note"
	FieldBeside      Field = "beside" // kept in the note, under its title
	FieldNothing     Field = "nothing"
	FieldID          Field = "id"
	FieldWell        Field = "well"
	FieldBrix        Field = "brix"
	FieldSugar       Field = "sugar_g_per_l"
	FieldAcid        Field = "acid_g_per_l"
	FieldContains    Field = "label_contains"
	FieldMayContain  Field = "label_may_contain"
	FieldVegan       Field = "label_vegan"
	FieldLabelReader Field = "label_read_by"
	FieldLabelRead   Field = "label_read_at"
	FieldOut         Field = "out_since" // when it ran out while others of its ingredient were left
	FieldWords       Field = "words"     // the house's own words for its ingredient
	FieldRow         Field = "row"       // for a fault of the whole row; [LeaveOut] settles it
)

// LeaveOut, settled as the text of [FieldRow], skips a row, whatever is wrong with it.
const LeaveOut = "leave out"

const (
	maxSamples   = 3   // cells shown as examples of a column
	maxHeadRows  = 15  // rows before the titles, such as a name and a date
	contentShare = 0.5 // share of cells that must parse before an untitled column is assigned a field
	leastTitles  = 2   // known titles that make a row the row of titles
)

// Fields lists the fields that a column may be assigned to, the most usual first.
func Fields() []Field {
	return []Field{FieldName, FieldKind, FieldGroup, FieldSize, FieldPrice, FieldCurrency, FieldStock, FieldStrength, FieldNote, FieldBeside, FieldNothing,
		FieldID, FieldWell, FieldSizeML, FieldSizeG, FieldBrix, FieldSugar, FieldAcid, FieldContains, FieldMayContain, FieldVegan, FieldLabelReader, FieldLabelRead, FieldOut, FieldWords}
}

// Column is a column of a stock file and the field that it is read as.
type Column struct {
	Title   string // as written; empty if the file has no titles
	Field   Field
	Samples []string // its first non-empty cells

	unit string // unit of bare numbers, from the title; pct for per cent
}

// titles are usual column titles of stock lists, for each field, the most specific first.
// Common practice, no source.
var titles = []struct {
	field Field
	words []string
}{
	{FieldName, []string{"name", "item", "item name", "product", "product name", "bottle name", "brand", "item description", "product description", "description", "label", "stock item", "article", "bottle"}},
	{FieldKind, []string{"ingredient", "kind", "subcategory", "sub category", "style", "type", "spirit type", "product type", "category", "class", "family", "varietal", "spirit", "liquor"}},
	{FieldGroup, []string{"group", "section", "department", "main category"}},
	{FieldSize, []string{"size", "bottle size", "btl size", "unit size", "volume", "vol", "format", "content", "capacity", "pack size", "ml", "cl", "measure", "bottle volume", "net content", "uom", "unit"}},
	{FieldPrice, []string{"price", "cost", "bottle cost", "btl cost", "unit cost", "cost per bottle", "cost per btl", "cost btl", "cost each", "unit price", "bottle price", "price per bottle", "last cost", "net price", "buy price", "purchase price", "wholesale", "cost price", "price each", "each"}},
	{FieldCurrency, []string{"currency", "cur", "ccy"}},
	{FieldStock, []string{"on hand", "onhand", "stock", "in stock", "quantity", "qty", "count", "inventory", "current", "current stock", "on shelf", "have", "qty on hand", "quantity on hand", "qoh", "soh", "stock on hand", "bottle on hand", "balance", "closing stock", "closing", "total on hand", "total bottle", "total"}},
	{FieldStrength, []string{"abv pct", "abv", "alcohol", "strength", "alc", "pct vol", "vol pct", "pct abv", "alcohol pct", "alc pct", "alc vol", "alc by vol", "proof"}},
	{FieldNote, []string{"note", "comment", "remark", "memo"}},
	{FieldID, []string{"id"}},
	{FieldWell, []string{"well", "house pour", "rail", "speed rail"}},
	{FieldSizeML, []string{"size ml"}},
	{FieldSizeG, []string{"size g", "weight", "weight g", "net weight"}},
	{FieldBrix, []string{"brix", "bx"}},
	{FieldSugar, []string{"sugar g per l", "sugar", "sugar g l"}},
	{FieldAcid, []string{"acid g per l", "acid", "acid g l"}},
	{FieldContains, []string{"label contain", "allergen", "contain"}},
	{FieldMayContain, []string{"label may contain", "may contain", "trace"}},
	{FieldVegan, []string{"label vegan", "vegan"}},
	{FieldLabelReader, []string{"label read by", "read by"}},
	{FieldLabelRead, []string{"label read at", "read at", "label date", "date read"}},
	{FieldOut, []string{"out since"}},
	{FieldWords, []string{"word", "house word", "own word", "also called"}},
	{FieldNothing, []string{"value", "total value", "total cost", "stock value", "extended", "extension", "ext cost", "row", "no", "line", "variance", "usage"}},
	{FieldBeside, []string{"par", "par level", "min", "minimum", "reorder", "reorder point", "order", "to order", "order qty", "supplier", "vendor", "distributor", "distro", "wholesaler", "location", "shelf", "bin", "area", "where", "sku", "code", "item code", "product code", "barcode", "upc", "ean", "origin", "country", "region", "vintage", "year", "case", "case size", "case cost", "case price", "pack", "retail", "sell price", "menu price", "producer", "maker"}},
}

// foreignTitles are the usual titles of stock lists in German, French, Spanish and Italian.
// Common practice, no source.
var foreignTitles = []struct {
	field Field
	words []string
}{
	{FieldName, []string{"artikel", "bezeichnung", "artikelbezeichnung", "produkt", "flasche", "marke", "désignation", "article", "produit", "bouteille", "marque", "artículo", "producto", "nombre", "botella", "marca", "articolo", "prodotto", "nome", "bottiglia", "descrizione"}},
	{FieldKind, []string{"kategorie", "sorte", "art", "catégorie", "famille", "categoría", "tipo", "categoria"}},
	{FieldGroup, []string{"warengruppe", "gruppe", "groupe", "rayon", "grupo", "gruppo"}},
	{FieldSize, []string{"inhalt", "größe", "grösse", "gebinde", "volumen", "flaschengröße", "contenance", "taille", "contenido", "tamaño", "capacidad", "contenuto", "formato", "capacità"}},
	{FieldPrice, []string{"preis", "ek", "ek preis", "einkaufspreis", "ek netto", "netto ek", "nettopreis", "stückpreis", "prix", "prix achat", "prix d achat", "prix ht", "prix unitaire", "coût", "precio", "precio compra", "coste", "costo", "prezzo", "prezzo unitario", "prezzo acquisto"}},
	{FieldCurrency, []string{"währung", "devise", "moneda", "divisa", "valuta"}},
	{FieldStock, []string{"bestand", "lagerbestand", "vorrat", "menge", "anzahl", "stück", "quantité", "qté", "cantidad", "existencia", "unidad", "quantità", "giacenza", "pezzo"}},
	{FieldStrength, []string{"alkohol", "alkoholgehalt", "vol prozent", "degré", "alcool", "titre alcoométrique", "alcohol vol", "graduación", "gradazione"}},
	{FieldNote, []string{"bemerkung", "notiz", "hinweis", "remarque", "nota"}},
	{FieldContains, []string{"allergene", "allergène", "alérgeno", "allergeni"}},
	{FieldBeside, []string{"lieferant", "lagerort", "regal", "artikelnummer", "artikel nr", "mindestbestand", "fournisseur", "emplacement", "référence", "proveedor", "ubicación", "fornitore", "scaffale"}},
}

// titleHints classify a title that is not in the list above by one of its words, in this
// order. A title about cases or sales is not the price of a bottle.
var titleHints = []struct {
	word  string
	field Field
}{
	{"sell", FieldBeside}, {"retail", FieldBeside}, {"menu", FieldBeside}, {"case", FieldBeside}, {"par", FieldBeside}, {"reorder", FieldBeside},
	{"supplier", FieldBeside}, {"vendor", FieldBeside}, {"distributor", FieldBeside}, {"location", FieldBeside}, {"code", FieldBeside}, {"value", FieldNothing},
	{"cost", FieldPrice}, {"price", FieldPrice}, {"hand", FieldStock}, {"stock", FieldStock}, {"qty", FieldStock}, {"quantity", FieldStock}, {"count", FieldStock}, {"inventory", FieldStock},
	{"size", FieldSize}, {"volume", FieldSize}, {"abv", FieldStrength}, {"proof", FieldStrength}, {"alcohol", FieldStrength},
	{"allergen", FieldContains}, {"category", FieldKind}, {"type", FieldKind}, {"kind", FieldKind}, {"style", FieldKind},
	{"note", FieldNote}, {"comment", FieldNote}, {"product", FieldName}, {"item", FieldName}, {"name", FieldName}, {"bottle", FieldName}, {"description", FieldName},
}

// titleUnits are units that a title may state for the numbers below it.
var titleUnits = map[string]string{"ml": "ml", "cl": "cl", "l": "l", "litre": "l", "liter": "l", "oz": "oz", "floz": "oz", "g": "g", "kg": "kg", "proof": "proof", "pct": "pct"}

var notInTitle = regexp.MustCompile(`[^\p{L}\p{N}]+`)

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

// headRow returns the index of the row of titles: the one with the most known titles
// among the first rows; -1 if there is none.
func headRow(rows []tableRow) int {
	best, most := -1, leastTitles-1
	for i := range rows[:min(len(rows), maxHeadRows)] {
		known, named := 0, false
		if i == 0 && !hasDigit(rows[i].raw) {
			known++ // a first row of only words is probably the titles
		}
		for _, cell := range rows[i].cells {
			field, _, _ := fieldOfTitle(cell)
			if field != "" && !hasDigit(cell) {
				known++
			}
			named = named || field == FieldName || field == FieldKind
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
func standsOver(first tableRow, rows []tableRow) bool {
	if hasDigit(first.raw) {
		return false
	}
	for i, cell := range first.cells {
		if letters.MatchString(cell) && shareOf(cellsOf(rows, i), hasDigit) > contentShare {
			return true
		}
	}
	return false
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// columnsOf assigns a field to every column, by its title or its content. If two columns
// claim a field, the more certain one gets it and the other goes into the note.
func columnsOf(head []string, rows []tableRow, known func(string) bool) []Column {
	width := len(head)
	if head == nil {
		for _, r := range rows {
			width = max(width, len(r.cells))
		}
	}
	columns := make([]Column, width)
	ranks := make([]int, width)
	for i := range columns {
		c := &columns[i]
		cells := cellsOf(rows, i)
		c.Samples = cells[:min(len(cells), maxSamples)]
		if i < len(head) {
			c.Title = strings.Join(strings.Fields(unguard(head[i])), " ")
			c.Field, ranks[i], c.unit = fieldOfTitle(c.Title)
		}
		if c.Field == FieldSize && c.unit == "" || c.Field == FieldName && ranks[i] > 0 || c.Field == FieldStock {
			c.Field = byContent(c.Field, cells)
		}
	}
	kindAmongNames(columns, ranks, rows, known)
	settleTies(columns, ranks)
	guessColumns(columns, rows, head != nil, known)
	for i := range columns {
		switch c := &columns[i]; {
		case c.Field == "" && len(c.Samples) == 0:
			c.Field = FieldNothing
		case c.Field == "":
			c.Field = FieldBeside
		}
	}
	return columns
}

// byContent corrects an ambiguous title by the cells: "Bottle" above sizes, "Unit" above
// words, "Total" above sums of money.
func byContent(field Field, cells []string) Field {
	sizes := shareOf(cells, numeral.LooksLikeSize)
	switch {
	case field == FieldName && sizes >= contentShare:
		return FieldSize
	case field == FieldSize && len(cells) > 0 && shareOf(cells, func(s string) bool { return numeral.LooksLikeSize(s) || hasDigit(s) }) == 0:
		return FieldBeside
	case field == FieldStock && shareOf(cells, numeral.LooksLikeMoney) >= contentShare:
		return FieldNothing
	}
	return field
}

// guessColumns assigns fields to columns without a known title, by their content. Bare
// numbers are guessed only in a file without titles.
func guessColumns(columns []Column, rows []tableRow, titled bool, known func(string) bool) {
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
	taken[FieldSize] = taken[FieldSize] || taken[FieldSizeML] || taken[FieldSizeG]
	isNumber := func(s string) bool { _, ok := numeral.Number(s, false); return ok }
	for _, guess := range []struct {
		field Field
		is    func(string) bool
	}{{FieldSize, numeral.LooksLikeSize}, {FieldStrength, numeral.LooksLikeShare}, {FieldPrice, numeral.LooksLikeMoney}, {FieldPrice, numeral.HasCents}, {FieldKind, known},
		{FieldStock, func(s string) bool { return !titled && isNumber(s) }}, {FieldName, func(s string) bool { return !isNumber(s) && letters.MatchString(s) }}} {
		for i := range columns {
			if cells := cellsOf(rows, i); shareOf(cells, guess.is) >= contentShare && take(i, guess.field) {
				break
			}
		}
	}
	// If there is one column of words, it holds the names, even if those name ingredients
	// too.
	if !taken[FieldName] {
		for i := range columns {
			if columns[i].Field == FieldKind && columns[i].Title == "" {
				columns[i].Field = FieldName
			}
		}
	}
}

// kindAmongNames tells two columns of names apart, such as Item and Bottle: the one in
// which most cells name an ingredient is FieldKind, unless a title says so.
func kindAmongNames(columns []Column, ranks []int, rows []tableRow, known func(string) bool) {
	best, most, names := -1, 0.0, 0
	for i, c := range columns {
		switch c.Field {
		case FieldKind:
			return
		case FieldName:
			names++
			if share := shareOf(cellsOf(rows, i), known); share >= contentShare && share > most {
				best, most = i, share
			}
		}
	}
	if names > 1 && best >= 0 {
		columns[best].Field, ranks[best] = FieldKind, 0
	}
}

// settleTies leaves each field except the note to one column.
func settleTies(columns []Column, ranks []int) {
	best := map[Field]int{}
	for i, c := range columns {
		switch c.Field {
		case "", FieldBeside, FieldNothing:
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
	_, grouped := best[FieldGroup]
	if f == FieldKind && !grouped && !slices.ContainsFunc(columns, func(c Column) bool { return c.Field == FieldGroup }) {
		best[FieldGroup] = i
		return FieldGroup
	}
	return FieldBeside
}

// cellsOf returns the non-empty cells of a column.
func cellsOf(rows []tableRow, i int) (out []string) {
	for _, r := range rows {
		if i < len(r.cells) {
			if s := strings.TrimSpace(unguard(r.cells[i])); s != "" {
				out = append(out, s)
			}
		}
	}
	return out
}

// shareOf returns the share of cells for which is returns true; 0 if there are no cells.
func shareOf(cells []string, is func(string) bool) float64 {
	n := 0
	for _, c := range cells {
		if is(c) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(cells)))
}
