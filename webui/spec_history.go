package webui

import (
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
)

// versionView is one line of the history of a spec.
type versionView struct {
	Version int64
	When    string // for people
	Stamp   string // for programs
	Who     string
	What    string
	Changes []string
	Latest  bool
	Bench   string // address of the bench with the version; empty if it was a removal
}

// actionWords say what a change did.
var actionWords = map[house.Action]string{house.Added: "added", house.Changed: "changed", house.Removed: "removed",
	house.Undone: "the change before it taken back"}

// historyOf says the changes of a spec in words, the latest first.
func historyOf(changes []house.Change, shelf *house.Shelf) []versionView {
	var out []versionView
	var before *house.Spec
	for i, c := range changes {
		v := versionView{Version: c.Version, When: moment(c.At), Stamp: c.At.UTC().Format(time.RFC3339), Who: c.Actor,
			What: actionWords[c.Action], Latest: i == len(changes)-1}
		spec, there := c.Item.(house.Spec)
		if there {
			v.Bench = benchOf(spec.ID, c.Version)
			if before != nil {
				v.Changes = specChanges(before, &spec, shelf)
			}
			before = &spec
		} else {
			before = nil
		}
		out = append(out, v)
	}
	slices.Reverse(out)
	return out
}

// moment is a time as the pages tell it.
func moment(t time.Time) string { return t.UTC().Format("2 Jan 2006, 15:04") + " UTC" }

// specChanges says in words what makes one version of a spec another. It is
// empty if they read the same.
func specChanges(from, to *house.Spec, shelf *house.Shelf) []string {
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
			out = append(out, ingredientName(p.Ingredient, shelf)+" from "+writtenAmount(old)+" to "+writtenAmount(p))
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
	return writtenAmount(p) + " " + ingredientName(p.Ingredient, shelf)
}

func writtenAmount(p house.Pour) string {
	return amountOf(&flavor.Pour{Amount: p.Amount, Unit: p.Unit})
}

// ingredientName is the name that the shelf has for an id, or the id.
func ingredientName(id string, shelf *house.Shelf) string {
	if p, ok := shelf.ByID(id); ok {
		return p.Name
	}
	return id
}
