package meaning

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
)

// What goes on top of a drink without an amount is dashed, floated, laid on it or fills its glass, by what it is.

// unmeasuredTop reports whether a line says that something tops the drink, and not
// with how much.
func unmeasuredTop(t *counting.Task) bool {
	return t.Line.AmountAt.Empty() && (t.Line.Unit == flavor.Top || t.Line.Unit == flavor.Float)
}

// dashesOn is how many dashes go on top of a drink where none are counted; common
// practice.
const dashesOn = 2

// dashedOn takes bitters that top a drink as dashes.
func (r *resolver) dashedOn(t *counting.Task) bool {
	if !unmeasuredTop(t) {
		return false
	}
	f := r.resolver.Find(t.Line.Name, naming.Place{Unit: flavor.Dash, Amount: dashesOn})
	if drizzled := t.Line.Unit == flavor.Float && f.Inferred; !f.Firm() || drizzled || f.Profile.Class != flavor.ClassCocktailBitters && f.Profile.Class != flavor.ClassTincture { // a "choc drizzle" is no bitters
		return false
	}
	if o := r.statedAbove(t, f.Profile); o != nil {
		o.Line.After, t.Laid = true, true
		r.note(measure.LineLocation(t.Line.Number) + ": “" + t.Line.Asked + "” refers to the " + f.Profile.Name + " above")
		return true
	}
	t.Hit, t.Unit, t.Amount = f, flavor.Dash, dashesOn
	t.Infer(flavor.InferredUnit)
	t.Infer(flavor.InferredAmount)
	t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as "+measure.FormatAmount(dashesOn, flavor.Dash)+" of "+f.Profile.Name)
	return true
}

// statedAbove is the line above another that pours some of an ingredient and says how much; nil
// if none does.
func (r *resolver) statedAbove(t *counting.Task, p *flavor.Profile) *counting.Task {
	for _, o := range r.tasks {
		if o == t {
			break
		}
		if o.Hit.Profile == p && !o.Line.AmountAt.Empty() {
			return o
		}
	}
	return nil
}

// solidOn keeps what is laid on a drink and cannot be poured as its garnish: "star anise
// on top".
func (r *resolver) solidOn(t *counting.Task) bool {
	if !unmeasuredTop(t) || !t.Line.UnitAt.Empty() { // "top with lime" is poured
		return false
	}
	p, _, ok := r.resolver.Named(t.Line.Name)
	if !ok || !p.Class.Solid() || p.Class == flavor.ClassSugar {
		return false
	}
	if _, pours := measure.MLPerUnit(flavor.Float, p); pours {
		return false
	}
	t.Laid = true
	r.draft.Garnish = strings.TrimPrefix(r.draft.Garnish+", "+t.Line.Name, ", ")
	r.note(measure.LineLocation(t.Line.Number) + ": “" + t.Line.Asked + "” is kept as garnish; write it with an amount to have it poured")
	return true
}

// laidOn takes what tops a drink and would not fill its glass, such as cream or
// wine, as a float.
func (r *resolver) laidOn(t *counting.Task) {
	p := t.Hit.Profile
	if !unmeasuredTop(t) || t.Unit != flavor.Top || Fills(p) || p.Class == flavor.ClassDairy && strings.HasPrefix(strings.ToLower(t.Line.Asked), "fill ") { // "fill the glass with milk"
		return
	}
	if p.Class == flavor.ClassAniseSpirit {
		t.Fault = measure.Invalid("amount", t.Line.Asked, "%q states no amount; write one, such as \"1 dash\", or \"rinse %s\"", t.Line.Asked, p.Name)
		return
	}
	if _, pours := measure.MLPerUnit(flavor.Float, p); !pours {
		return
	}
	t.Unit = flavor.Float
	t.Infer(flavor.InferredUnit)
	t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as a float, not as filling the glass")
}
