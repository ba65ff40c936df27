package stocksheet

// columnNote says what a column of a stock file holds.
type columnNote struct{ Name, Holds string }

var columnNotes = []columnNote{
	{"id", "Permanent id, in small letters and hyphens; if empty, it is made from the name. A row whose id is in stock changes that bottle."},
	{"name", "As the house calls it. Needed."},
	{"ingredient", "Its category, such as London dry gin, by name or id. Needed."},
	{"well", "yes for the bottle that is poured where a category has two; otherwise empty."},
	{"abv_pct", "Strength in % vol, from the label; empty to use the catalogue's."},
	{"brix", "Sugar in °Bx, for what holds no alcohol; empty if not measured."},
	{"sugar_g_per_l", "Sugar in g/L, in place of brix."},
	{"acid_g_per_l", "Acid in g/L."},
	{"price", "Of one full bottle; empty if not known."},
	{"currency", "Three letters, such as EUR; needed with a price."},
	{"size_ml", "What a full one holds, in mL. One size is needed."},
	{"size_g", "What a full one weighs, in g, for what is sold by weight."},
	{"stock", "How many bottles there are; an open one counts as what is left in it, such as 2.5; 0 or out is none, empty is not counted."},
	{"note", "Anything."},
	{"label_contains", "Allergens that its label names, with commas between them. Leave it empty where the label names none."},
	{"label_may_contain", "Allergens that its label says may be in it."},
	{"label_vegan", "yes where the label, or the maker, says that it is vegan."},
	{"label_read_by", "Who read the label. Without a name the label counts as unread, and what the maker has not stated counts as present."},
	{"label_read_at", "When, such as 2026-04-01."},
	{"out_since", "When it ran out, where others of its kind are still poured; empty if it is there."},
	{"words", "What this house calls its ingredient, with semicolons between them. A row without a name and an id says what one word means."},
}
