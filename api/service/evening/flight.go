package evening

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
)

// Poured returns the drink as it is poured now: as it is written, with its cover, or with
// what is missing left out. It is nil if the drink cannot be poured, or not for the guest.
func (d *Drink) Poured() *flavor.Spec {
	switch d.State {
	case Ready:
		return d.Spec
	case Covered:
		if c := Chosen(d.Touched); c != nil && (d.Touched.Near || d.Touched.NotSearched) {
			return &c.Spec
		}
		if d.Touched.LeftOut != nil {
			return &d.Touched.LeftOut.Spec
		}
	}
	return nil
}

// Flight is a little of several drinks, as each is poured now, in the order of tasting.
type Flight struct {
	Glasses  []Glass
	EthanolG float64  // that one guest takes in who drinks all of it
	Cautions []string // to be read out before the first sip
}

// Glass is one drink of a flight.
type Glass struct {
	*Drink
	Spec   *flavor.Spec // as it is poured now
	Mixed  *mix.Drink   // one of it, finished
	Make   int          // how many of it are made
	MadeML float64
	LeftML float64 // when everyone has theirs
}

// FlightOf plans a flight of drinks: each is poured as it can be now, eachML of it for each
// of so many guests. It fails with every fault at once: a drink that cannot be poured, one
// that is asked for twice, and those of [tasting.PlanSeveral].
func FlightOf(bar Kitchen, drinks []*Drink, eachML float64, guests int) (*Flight, error) {
	r := tasting.SeveralRequest{EachML: eachML, Guests: guests}
	var faults flavor.DataFaults
	poured := make([]*flavor.Spec, len(drinks))
	asked := map[*flavor.Spec]bool{}
	for i, d := range drinks {
		place := fmt.Sprintf("drinks[%d]", i)
		poured[i] = d.Poured()
		p := tasting.Poured{Name: d.Spec.Name}
		switch {
		case asked[d.Spec]:
			faults = append(faults, flavor.Invalid(place, d.Spec.Name, "%s is asked for twice; name it once", d.Spec.Name))
		case poured[i] == nil:
			faults = append(faults, flavor.Invalid(place, d.Spec.Name, "%s cannot be poured now: %s; take another drink", d.Spec.Name, d.why()))
		default:
			judged, err := bar.Judge(poured[i])
			found := flavor.DataFaultsOf(err)
			if err != nil && len(found) == 0 {
				return nil, err
			}
			for _, f := range found {
				faults = append(faults, flavor.Invalid(place, d.Spec.Name, "%s: %s", d.Spec.Name, f.Message))
			}
			if err == nil {
				p.Drink = judged.Drink
			}
		}
		asked[d.Spec] = true
		r.Drinks = append(r.Drinks, p)
	}
	plan, err := tasting.PlanSeveral(r)
	for _, f := range flavor.DataFaultsOf(err) {
		if f.Location != "drinks" || len(faults) == 0 { // what is wrong with a drink is said already
			faults = append(faults, f)
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if err != nil {
		return nil, err
	}
	f := &Flight{EthanolG: plan.EthanolG, Cautions: plan.Cautions}
	for _, s := range plan.Shares {
		f.Glasses = append(f.Glasses, Glass{Drink: drinks[s.At], Spec: poured[s.At], Mixed: r.Drinks[s.At].Drink, Make: s.Make, MadeML: s.MadeML, LeftML: s.LeftML})
	}
	return f, nil
}

// why says why a drink cannot be poured.
func (d *Drink) why() string {
	if d.State == NotFor {
		return "not for this guest, " + d.Because
	}
	var names []string
	if d.Touched != nil {
		for _, p := range d.Touched.Missing {
			names = append(names, p.Name)
		}
	}
	return flavor.JoinAnd(names) + " is missing, and nothing keeps the drink"
}
