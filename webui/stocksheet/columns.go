package stocksheet

import "counterpour/webui/say"

// columnNote says what a column of a stock file holds.
type columnNote struct{ Name, Holds string }

func columnNotes() []columnNote {
	return []columnNote{
		{"id", say.It("stocksheet.column-id")},
		{"name", say.It("stocksheet.column-name")},
		{"ingredient", say.It("stocksheet.column-ingredient")},
		{"well", say.It("stocksheet.column-well")},
		{"abv_pct", say.It("stocksheet.column-abv-pct")},
		{"brix", say.It("stocksheet.column-brix")},
		{"sugar_g_per_l", say.It("stocksheet.column-sugar-g-per-l")},
		{"acid_g_per_l", say.It("stocksheet.column-acid-g-per-l")},
		{"price", say.It("stocksheet.column-price")},
		{"currency", say.It("stocksheet.column-currency")},
		{"size_ml", say.It("stocksheet.column-size-ml")},
		{"size_g", say.It("stocksheet.column-size-g")},
		{"stock", say.It("stocksheet.column-stock")},
		{"par", say.It("stocksheet.column-par")},
		{"note", say.It("stocksheet.column-note")},
		{"label_contains", say.It("stocksheet.column-label-contains")},
		{"label_may_contain", say.It("stocksheet.column-label-may-contain")},
		{"label_vegan", say.It("stocksheet.column-label-vegan")},
		{"label_read_by", say.It("stocksheet.column-label-read-by")},
		{"label_read_at", say.It("stocksheet.column-label-read-at")},
		{"label_unread", say.It("stocksheet.column-label-unread")},
		{"out_since", say.It("stocksheet.column-out-since")},
		{"words", say.It("stocksheet.column-words")},
	}
}
