package part

import (
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

// Reserved are ids that name pages of the specs.
var Reserved = []string{"print", "export", "import"}

// SpecID is the id of a spec that is new.
func SpecID(name string) string {
	id := house.IDOf(house.KindSpec, name)
	if slices.Contains(Reserved, id) {
		id += "-spec"
	}
	return id
}

// SpecText writes a spec by the ids of its ingredients, for one that the shelf
// cannot pour.
func SpecText(s house.Spec) string {
	lines := []string{strings.TrimSuffix(draft.Format(flavor.Spec{Name: s.Name}), "\n")}
	for _, pour := range Written(s.Pours, house.NewShelf(nil)) {
		lines = append(lines, Amount(&pour)+" "+pour.Profile.Name)
	}
	return strings.Join(append(lines, string(s.Method)+", "+string(s.Service)), "\n") + "\n"
}
