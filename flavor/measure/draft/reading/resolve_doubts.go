package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/counting"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/draft/tongue"
)

// eitherWay settles or asks for a word that the other lines make doubtful: "sweet" beside citrus
// may be syrup, and "1 orange" beside bitters that are counted, bitters too.
func (r *resolver) eitherWay(t *counting.Task, pl naming.Place) bool {
	key := flavor.NormaliseName(t.Line.Name)
	if means := r.meantHere(t, key, pl); means != "" {
		if t.Bare() && means == naming.ByDash(key) {
			t.Unit, pl = flavor.Dash, naming.Place{Unit: flavor.Dash, Amount: t.Amount}
			t.Infer(flavor.InferredUnit)
		}
		p, _, ok := r.resolver.Named(means)
		if ok {
			t.Hit = naming.Found{Profile: p, How: flavor.MatchAlias, As: p.Name, Inferred: true}
			say(t, pl)
		}
		return ok
	}
	means := r.doubtful(t, key, pl)
	if means == nil {
		return false
	}
	if t.Fault = r.resolver.Asks(key, means, pl); t.Fault == nil {
		return false
	}
	t.Fault.Location = "ingredient"
	return true
}

// meantHere is what a word names by where the draft is from, or by what else it pours; empty where
// these say nothing of it.
func (r *resolver) meantHere(t *counting.Task, key string, pl naming.Place) string {
	switch {
	case !pl.Volume():
	case t.Bare() && t.Whole() && naming.ByDash(key) != "" && r.dashedBeside(t):
		return naming.ByDash(key)
	case tongue.Fruits(key) != nil:
		return r.fruitOf(key)
	case iberian[key] != "" && r.spanish(t):
		return iberian[key]
	case key == "white" && pl.ML() <= mostWhite && r.soured():
		return "egg white"
	}
	return ""
}

// doubtful lists what a word may mean beside what else is poured; nil if it is not in doubt.
func (r *resolver) doubtful(t *counting.Task, key string, pl naming.Place) []string {
	switch {
	case key == "sweet" && pl.Volume() && slices.ContainsFunc(r.tasks, sours):
		return []string{"simple syrup", "sweet vermouth"}
	case t.Bare() && t.Whole() && t.Unit == flavor.Ounce && naming.ByVolume(key) != "" && naming.ByDash(key) != "" && slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		return o.Bare() && o.Unit == flavor.Dash && o.Class() == flavor.ClassCocktailBitters
	}):
		return []string{naming.ByVolume(key), naming.ByDash(key)}
	}
	return nil
}

// dashedBeside reports whether nothing but dashes of bitters stands on the line of a bare number, in a drink
// without juice: the orange of "1 ango 1 orange" is bitters as well.
func (r *resolver) dashedBeside(t *counting.Task) bool {
	beside := false
	for _, o := range r.tasks {
		if f := r.resolver.Find(o.Line.Name, naming.PlaceOf(o.Unit, o.Amount, o.Line.After)); o != t && (sours(o) || f.Profile != nil && f.Profile.Class.Pressed()) {
			return false
		}
		if o != t && o.Line.Number == t.Line.Number {
			if o.Unit != flavor.Dash {
				return false
			}
			beside = true
		}
	}
	return beside && t.Amount <= mostDashes
}

// mostDashes is the most dashes of bitters that are written without a unit; common practice.
const mostDashes = 4

// sours reports whether a line pours the juice of a lemon or a lime.
func sours(t *counting.Task) bool {
	by := naming.ByVolume(flavor.NormaliseName(t.Line.Name))
	return by == "lemon juice" || by == "lime juice" || t.Class() == flavor.ClassSourJuice
}

// iberian are words that name another thing in a Spanish or French draft than in an English one.
var iberian = map[string]string{"pomelo": "grapefruit juice", "pamplemousse": "grapefruit juice"}

// spanish reports whether another line of a draft is written in another tongue: who writes
// English there means the word as English has it.
func (r *resolver) spanish(t *counting.Task) bool {
	return slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		if o == t {
			return false
		}
		f := r.resolver.Find(o.Line.Name, naming.PlaceOf(o.Unit, o.Amount, o.Line.After))
		return f.Firm() && tongue.Foreign(o.Line.Name, f.Profile.Name)
	})
}

// mostWhite is the most mL of egg white in one drink; common practice.
const mostWhite = 40.0

// soured reports whether a draft pours a spirit and the juice of a lemon or a lime, as a
// sour does; what is white in it is the white of an egg.
func (r *resolver) soured() bool {
	return slices.ContainsFunc(r.tasks, sours) && !slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		return o.Class() == flavor.ClassWine || o.Class() == flavor.ClassSparklingWine
	})
}

// fruitOf is what a word for the fruit of several countries names in the one that the draft is
// from; empty where nothing says which, or two things say another.
func (r *resolver) fruitOf(key string) string {
	means, americas, spain := tongue.Fruits(key), r.americas(key), r.spain(key)
	switch {
	case americas && !spain:
		return means[0]
	case spain && !americas:
		return means[1]
	}
	return ""
}

// americas reports whether a draft is from where a "limón" is a lime: it pours a spirit of
// those countries, beer, or a "jugo" or "suco", or blends in a "licuadora".
func (r *resolver) americas(key string) bool {
	if strings.HasPrefix(key, "jugo") || strings.HasPrefix(key, "suco") || r.says(americanWords) {
		return true
	}
	return slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		class := o.Class()
		if p, _, ok := r.resolver.Named(o.Line.Name); ok {
			class = p.Class
			if americanSpirits[p.ID] {
				return true
			}
		}
		return class == flavor.ClassAgaveSpirit || class == flavor.ClassBeer
	})
}

// spain reports whether a draft is from where a "limón" is a lemon: it says what only Spain
// calls so, or pours limes by their own name beside it.
func (r *resolver) spain(key string) bool {
	return strings.HasPrefix(key, "zumo") || strings.HasPrefix(key, "sumo") || r.says(iberianWords)
}

// says reports whether the text of a draft holds one of some keys.
func (r *resolver) says(words map[string]bool) bool {
	for w := range strings.FieldsSeq(flavor.NormaliseName(r.draft.String())) {
		if words[w] {
			return true
		}
	}
	return false
}

var (
	// americanWords and iberianWords are what one side of the ocean writes and the other does
	// not, as keys: common practice, no source.
	americanWords = token.Words(`jugo suco refresco toronja durazno frutilla licuar licuado licuadora popote abacaxi`)
	iberianWords  = token.Words(`zumo sumo melocoton nata batidora cubitera lima gaseosa cava`)
	// americanSpirits are spirits of the Americas whose class is poured everywhere.
	americanSpirits = token.Words(`pisco aromatic-pisco singani cachaca aged-cachaca`)
)

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
	if !unmeasuredTop(t) || t.Unit != flavor.Top || Fills(p) {
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

// leastPoured is how much of cocktail bitters is more likely an aperitif in mL; common
// practice.
const leastPoured = 15.0

// mostOfOne is the most mL of one thing in a drink for one; more is a batch.
const mostOfOne = 100.0

// mostClipping is the most letters of a clipping that may mean several things.
const mostClipping = 3

// bitterPoured asks where "orange bitter" is poured by the jigger: bitters are dashed.
// Where one aperitif alone has that name it is taken, and said.
func (r *resolver) bitterPoured(t *counting.Task, pl naming.Place) *flavor.DataFault {
	name := strings.ToLower(t.Line.Name)
	if t.Hit.Profile.Class != flavor.ClassCocktailBitters || !pl.Volume() || pl.ML() < leastPoured {
		return nil
	}
	if t.Hit.Inferred && pl.ML() <= mostOfOne && len(name) <= mostClipping { // "ab 45": a clipping that means something else here
		return measure.Invalid("ingredient", t.Line.Name, "%q may be %s, and so much of that is hardly ever poured; write the name in full", t.Line.Name, t.Hit.Profile.Name)
	}
	if !strings.HasSuffix(name, "bitter") && !strings.HasPrefix(name, "bitter ") {
		return nil
	}
	kind := strings.TrimPrefix(strings.TrimSuffix(name, " bitter"), "bitter ")
	if tongue.Foreign(kind, t.Hit.Profile.Name) { // "bitter arancio"
		kind = strings.TrimSuffix(t.Hit.Profile.Name, " bitters")
	}
	means := []string{kind + " aperitif", "light " + kind + " bitter aperitif", "bitter " + kind + " aperitif", kind + " bitter aperitif", "bitter " + kind}
	var poured []*flavor.Profile
	for _, m := range means {
		if p, _, ok := r.resolver.Named(m); ok && p.Class != flavor.ClassCocktailBitters && !slices.Contains(poured, p) {
			poured = append(poured, p)
		}
	}
	if len(poured) == 1 {
		t.Hit = naming.Found{Profile: poured[0], How: flavor.MatchAlias, As: poured[0].Name, Inferred: true}
		return nil
	}
	return r.resolver.Asks(name, append(means, t.Hit.Profile.Name), pl)
}

// Fills reports whether an ingredient is one that fills a glass up.
func Fills(p *flavor.Profile) bool {
	return p != nil && (p.Carbonated || p.Class.Part() == flavor.PartLength)
}

// shot says how much a shot is: an ounce and a half beside ounces, an ounce of
// espresso. Beside millilitres it depends on the country, so it is asked for.
func (r *resolver) shot(t *counting.Task) {
	if t.Class() == flavor.ClassCoffee {
		t.Unit, t.Amount = r.system().Unit(), t.Amount/1.5
		if t.Unit == flavor.Millilitre {
			t.Amount *= counting.EspressoML
		}
		t.Infer(flavor.InferredUnit)
		t.Notes = append(t.Notes, "a shot of coffee is taken as 1 oz")
		return
	}
	if r.system() == measure.Metric {
		t.Fault = measure.Invalid("unit", "shot", "a shot is 25 to 45 ml, by country; write the amount in ml or cl")
		t.Fault.Suggest = []string{string(flavor.Millilitre), string(flavor.Centilitre)}
		return
	}
	t.Infer(flavor.InferredUnit)
	t.Notes = append(t.Notes, "a shot is taken as 1½ oz")
}
