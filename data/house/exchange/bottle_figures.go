package exchange

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/kinds"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
)

func (b *bottleReader) size() {
	for _, col := range []struct {
		field column.Field
		unit  string
	}{{column.Size, b.defaults.sizeUnit}, {column.SizeML, numeral.ExactML}, {column.SizeG, numeral.ExactG}} {
		written := b.cell(col.field)
		_, said := b.settled.Cells[Cell{b.r.Number, column.Size}]
		if !b.has(col.field) || said && col.field != column.Size {
			continue
		}
		if col.field != column.SizeG || b.r.Bottle.SizeML == 0 || !b.has(column.SizeML) {
			b.r.Bottle.SizeML, b.r.Bottle.SizeG = 0, 0
		}
		if numeral.Nothing(written) {
			continue
		}
		a, open, ok := numeral.Size(bareSize(written), col.unit, b.comma)
		switch {
		case open:
			b.fault(column.Size, fmt.Sprintf("%q does not say of what; is it ml, cl or oz?", written), Remedy{written + " cl", column.Size, written + " cl"},
				Remedy{written + " ml", column.Size, written + " ml"}, Remedy{written + " oz", column.Size, written + " oz"})
		case !ok:
			b.fault(column.Size, fmt.Sprintf("%q is not a size; write it as 700 ml, 70 cl, 24 oz, 1 L or 500 g", written), b.sizes()...)
		case a.G > 0:
			b.r.Bottle.SizeG = a.G
		case a.ML > house.LargestML && col.field == column.Size:
			less := exact(a.ML/100) + " ml"
			b.fault(column.Size, fmt.Sprintf("%q is %s litres, more than the largest keg holds", written, exact(a.ML/1000)), Remedy{less, column.Size, less})
		default:
			b.r.Bottle.SizeML = a.ML
		}
	}
	if b.r.Bottle.SizeML == 0 && b.r.Bottle.SizeG == 0 && !b.sizeOfName() {
		b.fault(column.Size, "nothing says what a full one holds", b.sizes()...)
	}
}

func (b *bottleReader) sizes() (out []Remedy) {
	for _, s := range b.defaults.sizes {
		out = append(out, Remedy{s, column.Size, s})
	}
	return out
}

// figure reads an optional number; nil if the cell is empty.
func (b *bottleReader) figure(f column.Field, such string) *float64 {
	written := b.cell(f)
	if numeral.Nothing(written) {
		return nil
	}
	v, ok := numeral.Number(written, b.comma)
	if !ok {
		b.fault(f, fmt.Sprintf("%q is not a number; write it with digits, such as %s", written, such), empty(f))
		return nil
	}
	return &v
}

func (b *bottleReader) strengths() {
	m := &b.r.Bottle.Measured
	if b.has(column.Strength) {
		m.ABVPct = b.abv()
	}
	if b.has(column.Brix) || b.has(column.Sugar) { // brix and sugar both state the sweetness
		m.Brix, m.SugarGPerL = b.figure(column.Brix, "22.5"), b.figure(column.Sugar, "300")
	}
	if b.has(column.Acid) {
		m.AcidGPerL = b.figure(column.Acid, "60")
	}
}

// contradicted asks which kind the bottle is if its strength is that of another: a liqueur
// that was taken for a juice would lose its alcohol and its allergens.
func (b *bottleReader) contradicted() {
	kind, m := b.r.Kind.Profile, b.r.Bottle.Measured
	if kind == nil {
		return
	}
	err := m.Contradicts(kind)
	if err == nil {
		return
	}
	var remedies []Remedy
	for _, name := range b.kinds.Near(b.cell(column.Kind), b.r.Bottle.Name) {
		if p, _, known := b.kinds.Named(name); known && m.Contradicts(p) == nil {
			remedies = append(remedies, Remedy{name, column.Kind, name})
		}
	}
	b.fault(column.Kind, err.Error(), append(remedies, Remedy{"leave the strength out", column.Strength, ""})...)
}

// Cocktail bitters are sold in small bottles, and are far stronger than a bitter aperitif.
// Common practice, no source.
const (
	leastAperitifML  = 350.0 // of a bottle
	leastAperitifABV = 20.0  // % vol
	mostAperitifABV  = 30.0  // % vol
)

// bitterDrinks are what a bar pours by the jigger and calls a bitter, the usual first. Common
// practice, no source.
var bitterDrinks = []string{"red bitter aperitif", "light orange bitter aperitif", "medium amaro"}

// tooLargeForDashes asks which kind a bottle is that only the word bitter makes cocktail bitters, if
// its size or its strength is that of an aperitif: dashes of bitters are another drink, and cost
// another sum. The plural is mostly said of cocktail bitters, so that both must speak against it.
func (b *bottleReader) tooLargeForDashes() {
	kind, bottle := &b.r.Kind, &b.r.Bottle
	if kind.Profile == nil || kind.Profile.Class != flavor.ClassCocktailBitters || b.there[bottle.ID].Ingredient == kind.Profile.ID {
		return
	}
	if _, said := b.settled.Cells[Cell{b.r.Number, column.Kind}]; said {
		return
	}
	text := strings.ToLower(b.cell(column.Kind) + " " + b.cell(column.Group) + " " + b.heading + " " + bottle.Name)
	by, plural := strings.Fields(flavor.NormaliseName(kind.Why)), strings.Contains(text, "bitters")
	large := bottle.SizeML >= leastAperitifML
	weak := bottle.ABVPct != nil && *bottle.ABVPct >= leastAperitifABV && *bottle.ABVPct <= mostAperitifABV
	if !slices.Contains(by, "bitter") || plural && (len(by) > 1 || !large || !weak) || !large && !weak {
		return
	}
	var remedies []Remedy
	for _, name := range bitterDrinks {
		if p, _, known := b.kinds.Named(name); known {
			remedies = append(remedies, Remedy{p.Name, column.Kind, p.Name})
		}
	}
	message := fmt.Sprintf("%q may be a bitter aperitif or an amaro: cocktail bitters come in small bottles and are stronger; which kind is it?", kind.Why)
	remedies = append(remedies, Remedy{kind.Profile.Name, column.Kind, kind.Profile.Name})
	*kind, bottle.Ingredient = kinds.Kind{}, ""
	b.fault(column.Kind, message, remedies...)
}

func (b *bottleReader) abv() *float64 {
	written := b.cell(column.Strength)
	if numeral.Nothing(written) {
		return nil
	}
	unit := ""
	for _, c := range b.Columns {
		if c.Field == column.Strength {
			unit = c.Unit
		}
	}
	v, ok := numeral.Strength(written, unit, b.comma)
	if ok && b.defaults.fraction && v <= 1 && !strings.Contains(written, "%") {
		v *= 100
	}
	if !ok {
		b.fault(column.Strength, fmt.Sprintf("%q is not a strength; write it as 40 %% or 80 proof", written), empty(column.Strength))
		return nil
	}
	if v > 100 && v <= 200 {
		half := exact(v/2) + " %"
		b.fault(column.Strength, fmt.Sprintf("%q is above 100 %%; is it proof?", written), Remedy{half, column.Strength, half}, empty(column.Strength))
		return nil
	}
	return &v
}
