package part

import (
	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/say"
)

// SpecChanges lists the differences between two versions of a spec in words; empty if
// they are equal.
func SpecChanges(from, to *house.Spec, shelf *house.Shelf) []string {
	var out []string
	if from.Name != to.Name {
		out = append(out, say.It("part.name-changed", "From", from.Name, "To", to.Name))
	}
	out = append(out, pourChanges(Written(from.Pours, shelf), Written(to.Pours, shelf))...)
	if from.Method != to.Method {
		out = append(out, say.It("part.method-changed", "From", from.Method, "To", to.Method))
	}
	if from.Service != to.Service {
		out = append(out, say.It("part.service-changed", "From", from.Service, "To", to.Service))
	}
	switch {
	case from.Note == to.Note:
	case to.Note == "":
		out = append(out, say.It("part.note-taken-out"))
	case from.Note == "":
		out = append(out, say.It("part.note-added"))
	default:
		out = append(out, say.It("part.note-rewritten"))
	}
	if len(out) == 0 && !specbook.SameSpec(from, to) {
		out = append(out, say.It("part.something-else-changed"))
	}
	return out
}

// pourChanges lists the changes of the pours.
func pourChanges(was, is []flavor.Pour) []string {
	var out []string
	moved, last := false, -1
	for _, p := range Compare(was, is) {
		switch {
		case p.Was == nil:
			out = append(out, say.It("part.pour-added", "Amount", p.After(), "Name", p.Name()))
		case p.Is == nil:
			out = append(out, say.It("part.pour-taken-out", "Amount", p.Before(), "Name", p.Name()))
		case p.Before() != p.After():
			out = append(out, say.It("part.pour-changed", "Name", p.Name(), "From", p.Before(), "To", p.After()))
		}
		if p.Was != nil && p.Is != nil {
			moved = moved || p.At < last
			last = p.At
		}
	}
	if moved {
		out = append(out, say.It("part.order-changed"))
	}
	return out
}

// Written returns the pours of a record as written. An ingredient that the shelf lacks
// has its id as its name. The pours have no millilitres.
func Written(pours []house.Pour, shelf *house.Shelf) []flavor.Pour {
	out := make([]flavor.Pour, len(pours))
	for i, p := range pours {
		profile, ok := shelf.ByID(p.Ingredient)
		if !ok {
			profile = &flavor.Profile{ID: p.Ingredient, Name: p.Ingredient}
		}
		out[i] = flavor.Pour{Profile: profile, Amount: p.Amount, Unit: p.Unit}
	}
	return out
}
