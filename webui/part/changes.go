package part

import (
	"strings"

	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/flavor"
)

// SpecChanges lists the differences between two versions of a spec in words; empty if
// they are equal.
func SpecChanges(from, to *house.Spec, shelf *house.Shelf) []string {
	var out []string
	note := func(changed bool, words ...string) {
		if changed {
			out = append(out, strings.Join(words, ""))
		}
	}
	note(from.Name != to.Name, "the name from ", from.Name, " to ", to.Name)
	out = append(out, pourChanges(Written(from.Pours, shelf), Written(to.Pours, shelf))...)
	note(from.Method != to.Method, "from ", string(from.Method), " to ", string(to.Method))
	note(from.Service != to.Service, "served ", string(to.Service), " in place of ", string(from.Service))
	switch {
	case from.Note == to.Note:
	case to.Note == "":
		out = append(out, "the note taken out")
	case from.Note == "":
		out = append(out, "a note added")
	default:
		out = append(out, "the note rewritten")
	}
	if len(out) == 0 && !specbook.SameSpec(from, to) {
		out = append(out, "something else in the spec")
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
			out = append(out, p.After()+" "+p.Name()+" added")
		case p.Is == nil:
			out = append(out, p.Before()+" "+p.Name()+" taken out")
		case p.Before() != p.After():
			out = append(out, p.Name()+" from "+p.Before()+" to "+p.After())
		}
		if p.Was != nil && p.Is != nil {
			moved = moved || p.At < last
			last = p.At
		}
	}
	if moved {
		out = append(out, "the order of the pours")
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
