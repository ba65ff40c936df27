package prep

import (
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/technique"
)

// Keep says how long a batch may be kept in a clean, closed bottle in the fridge. Common
// practice, on the cautious side; it is no safety limit.
type Keep struct {
	Days    int // at most; 0: do not make it ahead
	Because string
	Text    string
}

const lawFirst = "Local food-safety law comes first. Date the bottle, keep it at 5 °C or below, and throw it away if in doubt."

// keepRules give the days by how an ingredient goes off.
var keepRules = map[flavor.Spoilage]Keep{
	flavor.SpoilsRawEgg: {0, "raw egg", "Add the egg to each drink as it is made; use pasteurised egg where the law asks for it."},
	flavor.SpoilsMilk:   {1, "dairy", "Use it the day it is made."},
	flavor.SpoilsCut:    {1, "fresh fruit, herbs or plant milk", "Use it the day it is made."},
	flavor.SpoilsJuice:  {1, "fresh juice", "Use it the day it is made: juice turns within hours of being pressed. Better still, batch the rest and add the juice to order."},
	flavor.SpoilsMade:   {3, "tea, coffee, cordial or an alcohol-free base", "Use it within three days."},
	flavor.SpoilsWine:   {2, "wine, beer or cider", "Use it within two days: it goes flat and stale."},
	flavor.SpoilsFaded:  {7, "vermouth or fortified wine", "Use it within a week; the wine fades."},
}

// Without perishable ingredients, strength decides.
const (
	strongABV  = 20.0
	strongDays = 28
	weakDays   = 3
)

// KeepOf returns how long a batch of s keeps, at a strength in % vol: as long as its most
// perishable ingredient. What the house makes keeps by the house's own rule or, without
// one, for three days.
func KeepOf(s flavor.Spec, abvPct float64, made []house.Made) Keep {
	k := Keep{Days: strongDays, Because: "nothing fresh, and strong", Text: "It keeps about four weeks; the flavour fades first."}
	switch {
	case abvPct <= flavor.NoAlcoholABV:
		k = Keep{Days: weakDays, Because: "no alcohol", Text: "It has no alcohol to keep it: use it within three days."}
	case abvPct < strongABV:
		k = Keep{Days: weakDays, Because: fmt.Sprintf("under %.0f %% vol", strongABV), Text: "Too weak for the alcohol to keep it: use it within three days."}
	}
	for _, p := range s.Pours {
		k = k.with(p.Profile, made)
	}
	if technique.Curdles(&s) {
		k.Text += " The acid in it curdles the milk."
	}
	k.Text += " " + lawFirst
	return k
}

// with returns the stricter of k and the limit of an ingredient.
func (k Keep) with(p *flavor.Profile, made []house.Made) Keep {
	if r, spoils := keepRules[p.Class.Spoils()]; spoils && r.Days < k.Days {
		k = r
	}
	for _, m := range made {
		if m.ID != p.ID {
			continue
		}
		days := m.KeepsDays
		if days == 0 {
			days = weakDays
		}
		if days < k.Days {
			k = Keep{days, m.Name, fmt.Sprintf("%s, made in the house, keeps no longer than %d days.", m.Name, days)}
		}
	}
	return k
}
