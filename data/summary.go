package data

import "counterpour/flavor"

// Summary counts the ingredients of a catalogue and the origins of their figures.
type Summary struct {
	Ingredients int
	Materials   int
	Cautions    int
	Figures     int // figures with an origin; the composition of an aroma counts as one
	Classes     []ClassCount
	Origins     []OriginCount
	Fields      []FieldCount
}

// ClassCount is the number of ingredients of a class.
type ClassCount struct {
	Class       flavor.Class
	Ingredients int
}

// OriginCount is the number of figures with an origin, and their share of all figures, 0
// to 1.
type OriginCount struct {
	Origin  flavor.Origin
	Figures int
	Share   float64
}

// FieldCount counts the figures of one field, by origin.
type FieldCount struct {
	Field   string // name in the catalogue's files
	Figures int
	Origins []OriginCount
}

// fieldFigure is a figure of a record and the name of its field.
type fieldFigure struct {
	field string
	flavor.Figure
}

// figureFields are the fields that hold figures, in the order of a record.
var figureFields = []string{"abv", "sugar", "acid", "bitter", "texture", "fat", "salt", "sweeteners", "caffeine", "tannin", "smells_of", "yields"}

// figuresOf returns every figure of a record, in the order of figureFields. Fat, salt,
// sweeteners, caffeine and tannin are included if stated. The composition of an aroma
// counts as one figure, whose value is the total intensity.
func figuresOf(p *flavor.Profile) []fieldFigure {
	figures := []fieldFigure{{"abv", p.ABV}, {"sugar", p.Sugar}, {"acid", p.Acid}, {"bitter", p.Bitter}, {"texture", p.Texture}}
	for _, f := range []fieldFigure{{"fat", p.Fat}, {"salt", p.Salt}, {"sweeteners", p.Sweeteners}, {"caffeine", p.Caffeine}, {"tannin", p.Tannin}} {
		if f.Origin != "" {
			figures = append(figures, f)
		}
	}
	total := p.Aroma.Total()
	figures = append(figures, fieldFigure{"smells_of", flavor.Figure{Value: total, Spread: total * p.AromaSpread, Origin: p.AromaOrigin}})
	for _, y := range p.Yields {
		figures = append(figures, fieldFigure{"yields", y.Amount})
	}
	return figures
}

// Summary counts the ingredients by class and the figures by origin, in the order of
// [flavor.Classes] and [flavor.Origins]. Classes and origins with a count of zero are
// included.
func (c *Catalogue) Summary() Summary {
	s := Summary{Ingredients: len(c.profiles), Materials: len(c.materials), Cautions: len(c.cautions)}
	classes := map[flavor.Class]int{}
	fields := map[string]map[flavor.Origin]int{}
	all := map[flavor.Origin]int{}
	for _, p := range c.profiles {
		classes[p.Class]++
		for _, f := range figuresOf(p) {
			if fields[f.field] == nil {
				fields[f.field] = map[flavor.Origin]int{}
			}
			fields[f.field][f.Origin]++
			all[f.Origin]++
		}
	}
	for _, class := range flavor.Classes() {
		s.Classes = append(s.Classes, ClassCount{class, classes[class]})
	}
	s.Figures, s.Origins = byOrigin(all)
	for _, field := range figureFields {
		n, origins := byOrigin(fields[field])
		s.Fields = append(s.Fields, FieldCount{field, n, origins})
	}
	return s
}

// byOrigin returns the sum of the counts, and the counts and shares in the order of the
// origins.
func byOrigin(counts map[flavor.Origin]int) (int, []OriginCount) {
	var total int
	for _, n := range counts {
		total += n
	}
	out := make([]OriginCount, 0, len(flavor.Origins()))
	for _, o := range flavor.Origins() {
		n := OriginCount{Origin: o, Figures: counts[o]}
		if total > 0 {
			n.Share = float64(n.Figures) / float64(total)
		}
		out = append(out, n)
	}
	return total, out
}
