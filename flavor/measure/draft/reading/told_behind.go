package reading

import (
	"slices"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/counting"
	"counterpour/flavor/measure/draft/naming"
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
	switch {
	case slices.ContainsFunc(naming.Strip(whole), r.book.Has): // "house lemon juice from concentrate"
		own := *l
		own.Name, own.Behind = whole, ""
		t.Line = &own
	case len(r.book.Mentioned(l.Behind)) > 0 || naming.ChangesBottle(l.Behind):
		t.Fault = measure.Invalid("ingredient", whole, "%q says more than %q; write what it adds on a line of its own, or name the bottle in your stock", whole, l.Name)
	default:
		t.Notes = append(t.Notes, "“"+l.Behind+"” is skipped")
	}
}
