package meaning

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
)

// eitherWay settles or asks for a word that the other lines make doubtful: "sweet" beside citrus
// may be syrup, and "1 orange" beside bitters that are counted, bitters too.
func (r *resolver) eitherWay(t *counting.Task, pl naming.Place) bool {
	key := flavor.NormaliseName(t.Line.Name)
	if means := r.meantHere(t, key, pl); means != "" {
		if t.Bare() && means == jargon.ByDash(key) {
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
	case t.Bare() && t.Whole() && jargon.ByDash(key) != "" && r.dashedBeside(t):
		return jargon.ByDash(key)
	case tongue.Fruits(key) != nil:
		return r.fruitOf(key)
	case grapefruits[key] != "" && r.foreignBeside(t):
		return grapefruits[key]
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
	case t.Bare() && t.Whole() && t.Unit == flavor.Ounce && jargon.ByVolume(key) != "" && jargon.ByDash(key) != "" && slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		return o.Bare() && o.Unit == flavor.Dash && o.Class() == flavor.ClassCocktailBitters
	}):
		return []string{jargon.ByVolume(key), jargon.ByDash(key)}
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
	by := jargon.ByVolume(flavor.NormaliseName(t.Line.Name))
	return by == "lemon juice" || by == "lime juice" || t.Class() == flavor.ClassSourJuice
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

// What milk has at most, in g/L: of fat, beyond which it is cream, and of sugar, beyond which it is from a tin.
const (
	mostMilkFat   = 60.0
	mostMilkSugar = 200.0
)

// Fills reports whether an ingredient is one that fills a glass up: what sparkles, lengthens, or is milk, but no cream.
func Fills(p *flavor.Profile) bool {
	if p == nil {
		return false
	}
	milk := (p.Class == flavor.ClassDairy || p.Class == flavor.ClassPlantMilk) && p.Fat.Value <= mostMilkFat && p.Sugar.Value <= mostMilkSugar
	return p.Carbonated || p.Class.Part() == flavor.PartLength || milk
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
