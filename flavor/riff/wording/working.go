package wording

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
)

// WorkingName is what a riff is called until the bar names it: the name of the drink that it
// came from and what is most of what changed, such as "Whiskey Sour, rye whiskey for bourbon",
// "Whiskey Sour with egg white" or "Whiskey Sour, on crushed ice". A riff of a
// drink without a name has none.
func WorkingName(from, s *flavor.Spec, changes []balance.Change) string {
	if from.Name == "" {
		return ""
	}
	var came, went *balance.Change
	for i := range changes {
		switch c := &changes[i]; {
		case c.FromML == 0 && (came == nil || c.ToML > came.ToML):
			came = c
		case c.ToML == 0 && (went == nil || c.FromML > went.FromML):
			went = c
		}
	}
	switch {
	case came != nil && went != nil && standsFor(came, went):
		return from.Name + ", " + plain(came.Profile.Name) + " for " + plain(went.Profile.Name)
	case came != nil:
		return from.Name + " with " + plain(came.Profile.Name)
	case went != nil:
		return from.Name + " without " + plain(went.Profile.Name)
	case from.Service != s.Service:
		return from.Name + ", " + servedAs(s)
	}
	return from.Name + ", other measures"
}

// plain is a name without what it says in brackets.
func plain(name string) string {
	cut, _, _ := strings.Cut(name, " (")
	return cut
}
