package specs

import (
	"slices"
	"time"

	"counterpour/data/house"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
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

// didOf says what a change did.
func didOf(a house.Action) string {
	switch a {
	case house.Added:
		return say.It("specs.added")
	case house.Changed:
		return say.It("specs.changed")
	case house.Removed:
		return say.It("specs.removed")
	case house.Undone:
		return say.It("specs.undone")
	}
	return ""
}

// historyOf says the changes of a spec in words, the latest first.
func historyOf(changes []house.Change, shelf *house.Shelf) []versionView {
	var out []versionView
	var before *house.Spec
	for i, c := range changes {
		v := versionView{Version: c.Version, When: words.Moment(c.At), Stamp: c.At.UTC().Format(time.RFC3339), Who: c.Actor,
			What: didOf(c.Action), Latest: i == len(changes)-1}
		spec, there := c.Item.(house.Spec)
		if there {
			v.Bench = benchOf(spec.ID, c.Version, anybody())
			if before != nil {
				v.Changes = part.SpecChanges(before, &spec, shelf)
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
