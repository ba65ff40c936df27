package part

import (
	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/say"
)

// Refused is a fault of a draft, with what mends it at a tap.
type Refused struct {
	LineFault
	Mends   []Mend    // what a tap may write at once
	Choices []Mend    // what somebody must know to be meant: nothing like a slip of the pen
	Unknown string    // an unknown name, which may be a word of this house; empty for other faults
	Kinds   []Meaning // of which it is a slip, so that one tap may keep it, the likeliest first
}

// Renamed is the name of which one that is not known is a slip, with the draft that it makes; nil
// if the fault is another, or it is a slip of none.
func (v *Refused) Renamed() *Example {
	for i := range v.Mends {
		if m := &v.Mends[i]; m.Lead == leadOf(remedy.Named) && len(m.Ways) > 0 {
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

// leadOf is what stands before the ways of a kind.
func leadOf(k remedy.Kind) string {
	switch k {
	case remedy.Named:
		return say.It("part.write")
	case remedy.Near:
		return say.It("part.something-like-it")
	case remedy.Beside:
		return say.It("part.drinks-like-this-pour")
	case remedy.Measured, remedy.AllIn:
		return say.It("part.pour")
	case remedy.Titled, remedy.LeftOut:
		return say.It("part.or")
	}
	return ""
}

// RefusedOf returns the faults of a draft with their remedies.
func RefusedOf(bar behind.Bar, r remedy.Request) (out []Refused, err error) {
	found, err := bar.Remedies(r)
	if err != nil {
		return nil, err
	}
	for i, told := range LineFaultsOf(r.Text, r.Faults) {
		v := Refused{LineFault: told, Unknown: found[i].Unknown}
		for _, w := range found[i].Ways {
			into := &v.Mends
			if w.Kind == remedy.Near || w.Kind == remedy.Beside {
				into = &v.Choices
			}
			if n := len(*into); n == 0 || (*into)[n-1].Lead != leadOf(w.Kind) {
				*into = append(*into, Mend{Lead: leadOf(w.Kind)})
			}
			last := &(*into)[len(*into)-1]
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
		return say.It("part.all-in", "Unit", UnitName(w.Unit))
	case remedy.Titled:
		return say.It("part.name-of-the-drink")
	case remedy.LeftOut:
		return say.It("part.leave-it-out")
	}
	return w.Says
}

// UnitName is how a unit of the jigger is called where it stands alone.
func UnitName(u flavor.Unit) string {
	switch u {
	case flavor.Ounce:
		return say.It("part.ounces")
	case flavor.Millilitre:
		return "mL"
	case flavor.Centilitre:
		return "cL"
	}
	return ""
}
