package flavor

import "slices"

// question is something that no law makes a label name, and that some guests who avoid
// an allergen do not take all the same.
type question struct {
	of    Allergen
	holds func(*Profile) bool
	text  string // after the name of the bottle
}

// questions is a table of the trade. Distillates from cereals are excepted from the
// allergens by Regulation (EU) No 1169/2011, Annex II, point 1; that kernels of stone
// fruit are none of its tree nuts follows from its point 8, and coconut is not in it
// either. That some guests avoid them is common practice, no source.
var questions = []question{
	{Gluten, fromGrain, "may hold spirit distilled from wheat, rye or barley: the law counts that as free of gluten, but some guests still avoid it"},
	{TreeNuts, fromKernels, "tastes of the kernels of stone fruit: the law does not count them as tree nuts, but some guests avoid them"},
	{TreeNuts, smellsOf("coconut"), "holds coconut or its flavour: European law does not count it as a tree nut, but some guests avoid it"},
}

// Ask returns what to ask a guest who avoids allergens before a drink is poured: what
// is in it that the law does not count among them, and that not every guest takes.
func (s *Spec) Ask(avoid []Allergen) []string {
	var out []string
	for _, q := range questions {
		if !slices.Contains(avoid, q.of) {
			continue
		}
		var names []string
		for _, p := range s.Held() {
			if q.holds(p) && !slices.Contains(names, p.Name) {
				names = append(names, p.Name)
			}
		}
		for _, name := range names {
			out = append(out, name+" "+q.text)
		}
	}
	return out
}

// Asks returns what to ask a guest who avoids allergens before p is poured, in words that go on
// from its name, see [Spec.Ask].
func (p *Profile) Asks(avoid []Allergen) (out []string) {
	for _, q := range questions {
		if slices.Contains(avoid, q.of) && q.holds(p) {
			out = append(out, q.text)
		}
	}
	return out
}

// smellsOf tells what smells of one of some materials: a record says no more of what it
// is distilled from or pressed on.
func smellsOf(materials ...string) func(*Profile) bool {
	return func(p *Profile) bool {
		return slices.ContainsFunc(p.Materials, func(m MaterialShare) bool { return slices.Contains(materials, m.Material) })
	}
}

var (
	fromKernels = smellsOf("cherry kernel", "apricot kernel")
	fromCereals = smellsOf("grain spirit", "malt spirit", "rye spice")
	fromOthers  = smellsOf("potato", "corn", "grape spirit", "rice")
)

// fromGrain reports whether a bottle holds, or may hold, spirit distilled from wheat, rye
// or barley: gins and whiskies do unless they say otherwise, a liqueur of gin does by law,
// and so does what smells of such a spirit and of nothing else that spirits are made from.
func fromGrain(p *Profile) bool {
	switch {
	case p.Class == ClassGin, p.Class == ClassWhiskey, p.Legal == "sloe gin":
		return true
	case p.Class == ClassAlcoholFree:
		return false
	}
	return p.ABV.Value > 0 && fromCereals(p) && !fromOthers(p)
}
