package drinks

import (
	"strings"

	"counterpour/flavor"
)

// InRatio are the parts of a drink that a ratio has numbers for, in the order in which bars write them:
// "daiquiri 60/30/20" is rum, lime and syrup. Common practice, no source.
var InRatio = []flavor.Part{flavor.PartBase, flavor.PartSour, flavor.PartSweetener, flavor.PartModifier, flavor.PartLength}

// Measured returns the names of the pours that a ratio of so many numbers measures in the drink of a name, in
// the order in which bars write them; nil if the proven drinks of that name do not agree on them.
func Measured(name string, n int) []string {
	how, ok := find(name)
	if !ok {
		how = list().whole[shortened(name)]
	}
	if how.ratios == "" {
		return nil
	}
	for list := range strings.SplitSeq(how.ratios, " | ") {
		if names := strings.Split(list, "; "); len(names) == n {
			return names
		}
	}
	return nil
}

// shortened is the one name of one word that is cut short to another: "daiq"; empty if none or several are.
func shortened(name string) string {
	key := flavor.NormaliseName(name)
	if !list().clipped[key] {
		return ""
	}
	found := ""
	for whole := range list().whole {
		if !strings.HasPrefix(whole, key) || strings.Contains(whole, " ") {
			continue
		}
		if found != "" {
			return ""
		}
		found = whole
	}
	return found
}
