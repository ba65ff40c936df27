package remedy

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/reading"
)

// Meanings is what else the name of a pour may mean.
type Meanings struct {
	Doubtful bool  // the name was worked out, and it may as well be one of the others
	Ways     []Way // the draft with another ingredient in its place, the likeliest first
}

// MeaningsOf returns what else the name of a line that was read may mean that the guest may
// have. It is doubtful if it was misspelt, or if the name was worked out and drinks pour
// another one of it as well: rum may be white or aged.
func MeaningsOf(bar Kitchen, r *reading.Reading, line int, g guest.Guest) (out Meanings) {
	at := r.Pours[line]
	pour := &r.Spec.Pours[at]
	out.Doubtful = pour.Match.How == flavor.MatchFuzzy
	inferred := slices.Contains(pour.Match.Inferred, flavor.InferredName)
	for _, other := range bar.Others(pour.Match.Asked, pour.Profile, 2*mostNames) {
		text := edit.Replace(r.Draft, line, other.Name).String()
		if len(out.Ways) == mostNames || !g.Accepts(other) || !means(bar, text, at, other, len(r.Spec.Pours)) {
			continue
		}
		out.Doubtful = out.Doubtful || inferred && bar.UsualML(other) > 0
		out.Ways = append(out.Ways, Way{Kind: Named, Says: other.Name, Text: text})
	}
	return out
}

// means reports whether a draft pours an ingredient in a place, and as many as before.
func means(bar Kitchen, text string, at int, wanted *flavor.Profile, pours int) bool {
	r, err := bar.ReadRest(text)
	return err == nil && len(r.Spec.Pours) == pours && r.Spec.Pours[at].Profile.ID == wanted.ID
}

// Units returns the unit in which the bare numbers of a draft were read, and the draft in
// the others in which they come to one drink as well. There is no way if the draft has no
// bare number.
func Units(r *reading.Reading) (read flavor.Unit, ways []Way) {
	lines := bareLines(r)
	if len(lines) == 0 {
		return "", nil
	}
	read = r.Spec.Pours[r.Pours[lines[0]]].Unit
	for _, u := range fitting(r.Draft, lines) {
		if u != read {
			ways = append(ways, allIn(r.Draft, lines, u))
		}
	}
	return read, ways
}

// Millilitres that all bare numbers of one drink come to, common practice.
const (
	leastBareML = 50.0
	mostBareML  = 300.0
)

// jiggers are the units that a bare number may be in.
var jiggers = []flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre}

// bareLines returns the lines whose bare number was read as an amount of the jigger, or as parts.
func bareLines(r *reading.Reading) (lines []int) {
	for i, at := range r.Pours {
		l := &r.Draft.Lines[i]
		if at >= 0 && l.Unit == "" && l.Measure == "" && !l.AmountAt.Empty() && (r.Spec.Pours[at].Unit.Jigger() || r.Spec.Pours[at].Unit == flavor.PartUnit) {
			lines = append(lines, i)
		}
	}
	return lines
}

// fitting returns the units in which the bare numbers of some lines come to one drink.
func fitting(d draft.Draft, lines []int) (out []flavor.Unit) {
	sum := 0.0
	for _, i := range lines {
		sum += d.Lines[i].Amount
	}
	for _, u := range jiggers {
		if per, ok := measure.MLPerUnit(u, nil); ok && sum*per >= leastBareML && sum*per <= mostBareML {
			out = append(out, u)
		}
	}
	return out
}

// allIn writes a unit to the amounts of some lines.
func allIn(d draft.Draft, lines []int, u flavor.Unit) Way {
	for _, i := range lines {
		if i < len(d.Lines) {
			d = edit.SetAmount(d, i, d.Lines[i].Amount, u)
		}
	}
	return Way{Kind: AllIn, Unit: u, Text: d.String()}
}
