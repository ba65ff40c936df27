package training

import (
	"fmt"
	"strconv"
	"strings"

	"counterpour/flavor/drill"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// saidIn is the answer to a round in words.
func saidIn(f form.Values, r *drill.Round) string {
	switch r.Request.Kind {
	case drill.KindFault:
		said, _ := saidBy(f)
		return said.Plain
	case drill.KindMend:
		var moved []string
		for i := range r.Specs[0].Pours {
			pour := &r.Specs[0].Pours[i]
			if text := f.Get(fmt.Sprintf("pour-%d", i)); !strings.EqualFold(text, part.Amount(pour)) {
				moved = append(moved, text+" of "+pour.Profile.Name)
			}
		}
		return words.List(moved)
	case drill.KindOrder:
		names := make([]string, len(r.Specs))
		for i := range r.Specs {
			if place, err := strconv.Atoi(f.Get(fmt.Sprintf("place-%d", i))); err == nil && place >= 0 && place < len(names) {
				names[place] = r.Specs[i].Name
			}
		}
		return strings.Join(names, "; ")
	case drill.KindGuess:
		return f.Get("abv") + " % vol, " + f.Get("volume") + " mL"
	}
	at, err := strconv.Atoi(f.Get("option"))
	if err != nil || at < 0 || at >= len(r.Options) {
		return ""
	}
	said := r.Options[at].Label
	if len(f["lost"]) > 0 {
		said += "; lost: " + words.List(f["lost"])
	}
	return said
}
