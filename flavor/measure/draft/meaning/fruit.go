package meaning

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
)

// A bare "orange" beside a spirit and lime is the juice, or the liqueur that sweetens the drink:
// one is another drink than the other.

// The mL of a liqueur that sweetens one drink: common practice.
const (
	leastLiqueurML = 10.0
	mostLiqueurML  = 30.0
)

// leastSweet is the sugar in g/L from which a pour sweetens a sour drink: that of a dry liqueur.
const leastSweet = 150

// fruitOrLiqueur asks for a fruit that stands for its juice or its liqueur, where the drink is a
// sour and nothing else in it is sweet. One fruit without a unit is asked for in every sour whose
// numbers are ounces: "1 orange" may count the fruit as well, while whoever writes "1 lemon" beside
// ounces always means its juice.
func (r *resolver) fruitOrLiqueur(t *counting.Task) {
	p, liqueur := t.Hit.Profile, jargon.Liqueur(t.Line.Name)
	if t.Fault != nil || p == nil || liqueur == "" || !t.Unit.Jigger() {
		return
	}
	per, ok := measure.MLPerUnit(t.Unit, p)
	if ml := per * t.Amount; !ok || ml < leastLiqueurML || ml > mostLiqueurML {
		return
	}
	based, sour, counts := false, false, t.Bare() && t.Unit == flavor.Ounce && t.Amount == 1
	for _, o := range r.tasks {
		q := o.Hit.Profile
		if o == t || q == nil {
			continue
		}
		if !counts && (q.Sugar.Value >= leastSweet || q.Carbonated) {
			return
		}
		based = based || q.Base()
		sour = sour || q.Class == flavor.ClassSourJuice
	}
	if based && sour {
		t.Fault = r.resolver.Asks(flavor.NormaliseName(t.Line.Name), slices.Compact([]string{p.Name, liqueur}), naming.PlaceOf(t.Unit, t.Amount, t.Line.After))
	}
}

// liqueurWeighed is the fault of a liqueur by the name of what it is made of, by weight or by number: "20 g
// hazelnuts" are nuts.
func (r *resolver) liqueurWeighed(t *counting.Task) *flavor.DataFault {
	p := t.Hit.Profile
	if !(p.ABV.Value > 0) || t.Unit != flavor.Gram && !t.Unit.Counted() {
		return nil
	}
	short := flavor.NormaliseName(t.Line.Name)
	if short == flavor.NormaliseName(p.Name) { // amaretto is called so by itself
		return nil
	}
	full, _ := jargon.Lengthen(short) // "dark choc"
	if !slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(name string) bool {
		name = flavor.NormaliseName(name)
		return name == short+" liqueur" || name == full+" liqueur"
	}) {
		return nil
	}
	return measure.Invalid("ingredient", t.Line.Name, "%q by weight or by number is no liqueur; write what is poured, such as %q, or what the house makes of it as a bottle of the house", t.Line.Name, p.Name)
}
