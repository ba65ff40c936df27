package training

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor/drill"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// recordOf is a graded round as the house keeps it. Its id comes from the person
// and the round, so that one sent twice is one record.
func recordOf(name string, result drill.Result, r *drill.Round, g *drill.Grade, given string) house.Training {
	points := g.Points
	return house.Training{ID: roundID(name, &r.Request), At: result.At, Person: name, Drill: drillID(&r.Request),
		Question: r.Question, Wanted: g.Solution, Given: given, Right: g.Right, Score: &points,
		Kind: string(result.Kind), Axis: result.Axis, SizeJND: &result.Size, Quality: &result.Quality}
}

// resultOf is what a record says of a learner. It is false for a record that
// says nothing, such as one of an earlier version.
func resultOf(t *house.Training) (drill.Result, bool) {
	if t.Kind == "" || t.SizeJND == nil || t.Quality == nil {
		return drill.Result{}, false
	}
	return drill.Result{Kind: drill.Kind(t.Kind), Axis: t.Axis, Size: *t.SizeJND, Right: t.Right, Quality: *t.Quality, At: t.At}, true
}

func roundID(name string, r *drill.RoundRequest) string {
	h := sha256.New()
	fmt.Fprintf(h, "%s\n%s", same(name), bytesOf(r))
	return "round-" + hex.EncodeToString(h.Sum(nil)[:12])
}

// drillID names a round by the request that makes it again.
func drillID(r *drill.RoundRequest) string {
	return fmt.Sprintf("%s:%v:%s:%s", r.Kind, r.Axis, strconv.FormatFloat(r.Size, 'g', -1, 64), strconv.FormatUint(r.Seed, 36))
}

// saidIn is the answer to a round in words.
func saidIn(f form.Values, r *drill.Round) string {
	switch r.Request.Kind {
	case drill.KindFault:
		return "too " + f.Get("way") + " " + f.Get("of")
	case drill.KindMend:
		var moved []string
		for i := range r.Specs[0].Pours {
			pour := &r.Specs[0].Pours[i]
			if text := f.Get(fmt.Sprintf("pour-%d", i)); text != part.Amount(pour) {
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
		return strings.Join(names, ", ")
	case drill.KindGuess:
		return f.Get("abv") + " % vol, " + f.Get("volume") + " ml"
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
