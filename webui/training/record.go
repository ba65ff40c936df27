package training

import (
	"fmt"
	"strconv"
	"strings"

	"counterpour/flavor/drill"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
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
				moved = append(moved, say.It("training.moved-to", "Amount", text, "Pour", pour.Profile.Name))
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
		return say.It("training.guessed", "Strength", f.Get("abv"), "Volume", f.Get("volume"))
	}
	at, err := strconv.Atoi(f.Get("option"))
	if err != nil || at < 0 || at >= len(r.Options) {
		return ""
	}
	return say.It("training.picked-and-lost", "Cover", r.Options[at].Label, "Lost", words.List(f["lost"]))
}
