package meaning

import (
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/pattern"
)

// toldBehind settles what is told behind the name of a pour: it belongs to the name where an
// ingredient is called so, is asked for where it names another or changes the bottle, and
// is passed over else, which is said.
func (r *resolver) toldBehind(t *counting.Task) {
	l := t.Line
	if l.Behind == "" {
		return
	}
	whole := l.Name + " " + l.Behind
	if in := fromVessel.FindStringSubmatch(l.Behind); in != nil {
		own := *l
		own.Name, own.Behind = r.ofVessel(in[1], l.Name), ""
		if t.Line = &own; own.Name == "" {
			t.Line = l
			t.Fault = measure.Invalid("ingredient", whole, "%q is not known here; name the bottle in your stock, or write what it is like", whole)
		}
		return
	}
	switch {
	case slices.ContainsFunc(jargon.Strip(whole), r.resolver.Has): // "house lemon juice from concentrate"
		own := *l
		own.Name, own.Behind = whole, ""
		t.Line = &own
	case len(r.resolver.Mentioned(l.Behind)) > 0 || jargon.ChangesBottle(l.Behind):
		t.Fault = measure.Invalid("ingredient", whole, "%q says more than %q; write what it adds on a line of its own, or name the bottle in your stock", whole, l.Name)
	default:
		t.Notes = append(t.Notes, "“"+l.Behind+"” is skipped")
	}
}

// fromVessel is what a jar or a tin holds that a pour is poured off: "brine from a jar of capers".
var fromVessel = pattern.Of(`(?i)^from[ \t]+(?:an?|the|that)[ \t]+(?:jar|tin|can|pot|tub)[ \t]+of[ \t]+(\pL+)$`)

// ofVessel returns the name of what is poured off what a vessel holds, "caper brine"; empty if none is
// known.
func (r *resolver) ofVessel(holds, name string) string {
	for _, of := range []string{holds, strings.TrimSuffix(holds, "s"), strings.TrimSuffix(holds, "ies") + "y"} {
		if whole := of + " " + name; r.resolver.Has(whole) {
			return whole
		}
	}
	return ""
}
