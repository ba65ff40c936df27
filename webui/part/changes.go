package part

import (
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
)

// SpecChanges says in words what makes one version of a spec another. It is
// empty if they read the same.
func SpecChanges(from, to *house.Spec, shelf *house.Shelf) []string {
	var out []string
	note := func(changed bool, words ...string) {
		if changed {
			out = append(out, strings.Join(words, ""))
		}
	}
	note(from.Name != to.Name, "the name from ", from.Name, " to ", to.Name)
	out = append(out, pourChanges(from.Pours, to.Pours, shelf)...)
	note(from.Method != to.Method, "from ", string(from.Method), " to ", string(to.Method))
	note(from.Service != to.Service, "served ", string(to.Service), " in place of ", string(from.Service))
	switch {
	case from.Note == to.Note:
	case to.Note == "":
		out = append(out, "the note taken out")
	case from.Note == "":
		out = append(out, "a note added")
	default:
		out = append(out, "the note written anew")
	}
	return out
}

// pourChanges compares pours by ingredient: of two pours of one, the first is
// held against the first.
func pourChanges(from, to []house.Pour, shelf *house.Shelf) []string {
	var out []string
	left := slices.Clone(from)
	moved := false
	last := -1
	for _, p := range to {
		at := slices.IndexFunc(left, func(o house.Pour) bool { return o.Ingredient == p.Ingredient })
		if at < 0 {
			out = append(out, pourWords(p, shelf)+" added")
			continue
		}
		old := left[at]
		left[at].Ingredient = "" // it has its match
		moved = moved || at < last
		last = at
		if old.Amount != p.Amount || old.Unit != p.Unit {
			out = append(out, IngredientName(p.Ingredient, shelf)+" from "+WrittenAmount(old)+" to "+WrittenAmount(p))
		}
	}
	for _, p := range left {
		if p.Ingredient != "" {
			out = append(out, pourWords(p, shelf)+" taken out")
		}
	}
	if moved {
		out = append(out, "the order of the pours")
	}
	return out
}

func pourWords(p house.Pour, shelf *house.Shelf) string {
	return WrittenAmount(p) + " " + IngredientName(p.Ingredient, shelf)
}

// WrittenAmount is the amount of a pour as it was written.
func WrittenAmount(p house.Pour) string {
	return Amount(&flavor.Pour{Amount: p.Amount, Unit: p.Unit})
}

// IngredientName is the name that the shelf has for an id, or the id.
func IngredientName(id string, shelf *house.Shelf) string {
	if p, ok := shelf.ByID(id); ok {
		return p.Name
	}
	return id
}
