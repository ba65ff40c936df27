package tables

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"counterpour/flavor"
)

// Fields are the fields that a table can supply, named as in the catalogue's files.
var Fields = []string{"abv", "sugar", "acid", "bitter", "texture", "fat", "salt", "caffeine", "tannin"}

// smallest is the smallest spread of a figure, in the unit of the field: the error of a
// label or of a usual assay. A value of zero has no spread, except for sugar and acid, of
// which there may be traces.
var smallest = map[string]float64{"abv": 0.3, "sugar": 0.5, "acid": 0.1, "bitter": 0.5, "texture": 0.1, "fat": 0.1, "salt": 0.01, "caffeine": 5, "tannin": 0.05}

// entry is the entry of one ingredient in figures.toml.
type entry struct {
	Rows []string          `toml:"rows"` // "usda 09152", or "usda 09152: sugar, salt" for these fields only
	Vary float64           `toml:"vary"` // relative spread between fruits, batches or makers of a food
	Plus float64           `toml:"plus"` // mass fraction of sugar added to the food
	Keep map[string]string `toml:"keep"` // fields where the record departs from its rows, with the reason
}

// source is a row of an entry and the fields to take from it.
type source struct {
	rows   []*row
	fields []string
}

// Library holds the tables and the list of what is taken from them. It is read-only.
type Library struct {
	entries map[string]entry
	sources map[string][]source
	copied  []string // every row of the tables
}

// Taken is a figure as computed from the tables. Reason says why the record keeps another
// value; empty if it does not.
type Taken struct {
	Field  string
	Figure flavor.Figure
	Reason string
}

// Load reads the embedded tables and figures.toml. The error joins all faults.
func Load() (*Library, error) {
	all := map[string]map[string][]*row{}
	var copied []string
	for _, table := range slices.Sorted(maps.Keys(rules)) {
		rows, err := loadRows(table)
		if err != nil {
			return nil, err
		}
		all[table] = rows
		for _, key := range slices.Sorted(maps.Keys(rows)) {
			copied = append(copied, rows[key][0].ref())
		}
	}
	text, err := files.ReadFile("figures.toml")
	if err != nil {
		return nil, err
	}
	slices.Sort(copied)
	b := &Library{sources: map[string][]source{}, copied: copied}
	d := toml.NewDecoder(strings.NewReader(string(text)))
	if err := d.DisallowUnknownFields().Decode(&b.entries); err != nil {
		return nil, fmt.Errorf("tables: figures.toml: %w", err)
	}
	var faults []error
	for _, id := range b.IDs() {
		for _, text := range b.entries[id].Rows {
			s, err := parseSource(text, all)
			if err != nil {
				faults = append(faults, fmt.Errorf("tables: figures.toml: %s: %w", id, err))
				continue
			}
			b.sources[id] = append(b.sources[id], s)
		}
	}
	return b, errors.Join(faults...)
}

func parseSource(text string, all map[string]map[string][]*row) (source, error) {
	ref, fields, some := strings.Cut(text, ":")
	table, key, _ := strings.Cut(strings.TrimSpace(ref), " ")
	rows := all[table][key]
	if len(rows) == 0 {
		return source{}, fmt.Errorf("row %q is in no table here", ref)
	}
	s := source{rows: rows, fields: Fields}
	if !some {
		return s, nil
	}
	s.fields = nil
	for f := range strings.SplitSeq(fields, ",") {
		f = strings.TrimSpace(f)
		if rules[table][f] == nil {
			return source{}, fmt.Errorf("row %q gives no %q", ref, f)
		}
		s.fields = append(s.fields, f)
	}
	return s, nil
}

// IDs lists the ingredients with an entry, sorted.
func (b *Library) IDs() []string { return slices.Sorted(maps.Keys(b.entries)) }

// Rows lists the rows that are used, by table and key, sorted.
func (b *Library) Rows() []string {
	seen := map[string]bool{}
	for _, list := range b.sources {
		for _, s := range list {
			seen[s.rows[0].ref()] = true
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// Copied lists every row of the tables, by table and key, sorted.
func (b *Library) Copied() []string { return slices.Clone(b.copied) }

// Figures computes the figures of an ingredient from the tables, in the order of
// [Fields]. Without an entry there are none.
func (b *Library) Figures(p *flavor.Profile) []Taken {
	e := b.entries[p.ID]
	c := context{vary: e.Vary, acids: p.Acids, plus: e.Plus}
	var out []Taken
	for _, field := range Fields {
		if f, ok := b.figure(b.sources[p.ID], field, c); ok {
			out = append(out, Taken{Field: field, Figure: f, Reason: e.Keep[field]})
		}
	}
	return out
}

// figure averages the rows of the first kind that supply a field: foods before products
// of a market.
func (b *Library) figure(list []source, field string, c context) (flavor.Figure, bool) {
	var samples []sample
	var from []string
	kind := ""
	for _, s := range list {
		if !slices.Contains(s.fields, field) || kind != "" && kind != kindOf(s.rows[0]) {
			continue
		}
		given := joined{}
		for _, r := range s.rows {
			rule := rules[r.table][field]
			if rule == nil {
				continue
			}
			if x, ok := rule(r, c); ok {
				given.add(x)
			}
		}
		if len(given.samples) == 0 {
			continue
		}
		kind = kindOf(s.rows[0])
		samples = append(samples, given.samples...)
		from = append(from, given.text(s.rows[0]))
	}
	if len(samples) == 0 {
		return flavor.Figure{}, false
	}
	return average(samples, field, strings.Join(from, "; ")), true
}

// kindOf returns whether a row describes a food or a range of products.
func kindOf(r *row) string {
	if r.table == "market" || r.table == "beer" {
		return "range"
	}
	return "food"
}

// joined collects the samples of one key from several countries.
type joined struct{ samples []sample }

func (j *joined) add(s sample) { j.samples = append(j.samples, s) }

func (j *joined) text(r *row) string {
	where := citation[r.table] + r.key
	if kindOf(r) == "food" {
		return where + ": " + j.samples[0].read
	}
	word, rest, _ := strings.Cut(j.samples[0].read, ",")
	word, _, _ = strings.Cut(word, " of ")
	n := 0.0
	for _, s := range j.samples {
		n += s.weight
	}
	if rest != "" {
		rest = "," + rest
	}
	return fmt.Sprintf("%s: %s of %g%s", where, word, n, rest)
}

// average returns the weighted mean of the samples. Its spread combines those within and
// between the samples.
func average(samples []sample, field, source string) flavor.Figure {
	var weight, sum, square float64
	plain, remembered, zero := samples[0].plain, false, true
	for _, s := range samples {
		weight += s.weight
		sum += s.weight * s.value
		plain = plain && s.plain && s.value == samples[0].value
		remembered = remembered || s.remembered
		zero = zero && s.value == 0 && s.spread == 0
	}
	v := sum / weight
	for _, s := range samples {
		square += s.weight * (s.spread*s.spread + (s.value-v)*(s.value-v))
	}
	f := flavor.Figure{Value: rounded(v, field), Spread: rounded(math.Max(math.Sqrt(square/weight), smallest[field]), field), Source: source}
	if zero && field != "sugar" && field != "acid" {
		f.Spread = 0
	}
	switch {
	case remembered:
		f.Origin = flavor.OriginComputedMemory
	case plain:
		f.Origin = flavor.OriginPublished
	default:
		f.Origin = flavor.OriginComputed
	}
	return f
}

// rounded rounds to the precision of the tables: hundredths for salt, tenths below a
// hundred, units above.
func rounded(v float64, field string) float64 {
	scale := 10.0
	switch {
	case field == "salt":
		scale = 100
	case v >= 100:
		scale = 1
	}
	return math.Round(v*scale) / scale
}
