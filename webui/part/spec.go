package part

import (
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
)

// SpecText writes a spec with the ids of its ingredients, for a spec that the shelf
// cannot pour.
func SpecText(s house.Spec) string {
	lines := []string{strings.TrimSuffix(edit.Format(flavor.Spec{Name: s.Name}), "\n")}
	for _, pour := range Written(s.Pours, house.NewShelf(nil)) {
		lines = append(lines, Amount(&pour)+" "+pour.Profile.Name)
	}
	return strings.Join(append(lines, string(s.Method)+", "+string(s.Service)), "\n") + "\n"
}
