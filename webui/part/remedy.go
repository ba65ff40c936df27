package part

import (
	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/webui/behind"
)

// Refused is a fault of a draft, with what mends it at a tap.
type Refused struct {
	Fault
	Mends   []Mend
	Unknown string    // an unknown name, which may be a word of this house; empty for other faults
	Kinds   []Meaning // what it may mean, the likeliest first
}

// Renamed is the likeliest name for one that is not known, with the draft that it makes; nil
// if the fault is another, or nothing is like it.
func (v *Refused) Renamed() *Example {
	for i := range v.Mends {
		if m := &v.Mends[i]; m.Lead == leads[remedy.Named] && len(m.Ways) > 0 {
			return &m.Ways[0]
		}
	}
	return nil
}

// Mend is several ways to mend a fault, each with the draft that it makes.
type Mend struct {
	Lead string
	Ways []Example
}

// Meaning is an ingredient that a word of the house may mean.
type Meaning struct{ ID, Name string }

// leads is what stands before the ways of a kind.
var leads = map[remedy.Kind]string{
	remedy.Named: "Write", remedy.Beside: "Drinks like this one also pour", remedy.Measured: "Pour", remedy.AllIn: "Pour",
	remedy.Titled: "Or", remedy.LeftOut: "Or",
}

// RefusedOf returns the faults of a draft with their remedies.
func RefusedOf(bar behind.Bar, r remedy.Request) (out []Refused, err error) {
	found, err := bar.Remedies(r)
	if err != nil {
		return nil, err
	}
	for i, told := range FaultsOf(r.Text, r.Faults) {
		v := Refused{Fault: told, Unknown: found[i].Unknown}
		for _, w := range found[i].Ways {
			if n := len(v.Mends); n == 0 || v.Mends[n-1].Lead != leads[w.Kind] {
				v.Mends = append(v.Mends, Mend{Lead: leads[w.Kind]})
			}
			last := &v.Mends[len(v.Mends)-1]
			last.Ways = append(last.Ways, Example{Name: sayWay(w), Text: w.Text})
		}
		for _, p := range found[i].Means {
			v.Kinds = append(v.Kinds, Meaning{p.ID, p.Name})
		}
		out = append(out, v)
	}
	return out, nil
}

// sayWay says what a way to mend a draft makes of it.
func sayWay(w remedy.Way) string {
	switch w.Kind {
	case remedy.AllIn:
		return "all in " + UnitName(w.Unit)
	case remedy.Titled:
		return "It is the drink’s name"
	case remedy.LeftOut:
		return "Leave it out"
	}
	return w.Says
}

// unitNames is how the units of the jigger are called where they stand alone.
var unitNames = map[flavor.Unit]string{flavor.Ounce: "ounces", flavor.Millilitre: "mL", flavor.Centilitre: "cL"}

// UnitName is how a unit of the jigger is called where it stands alone.
func UnitName(u flavor.Unit) string { return unitNames[u] }
