package riffs

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// How many relatives are listed, how many riffs of a long list are drawn, and how many
// are shown before a tap.
const (
	shownRelatives = 4
	mostDrawn      = 3
	shownAtFirst   = 10
)

// riffsView is a list of riffs.
type riffsView struct {
	Title     string
	Sub       string // who drinks it and what was wished
	Riffs     cards
	Without   []string // the nearest miss, and what of the drink is not poured, and why
	Why       []string // why there is none, or why so few
	Relatives []relativeView
	Cautions  []riffCaution
}

// cards are the riffs or drafts of a list.
type cards []riffView

// First are those that are shown at first.
func (c cards) First() cards { return c[:min(len(c), shownAtFirst)] }

// Rest are those behind a tap.
func (c cards) Rest() cards { return c[min(len(c), shownAtFirst):] }

// riffView is one riff, draft or stop.
type riffView struct {
	ID        string
	Name      string   // what it is, in the form of the trade
	Because   string   // why it is worth a try
	Text      string   // what to pour
	Effect    string   // and what it does
	New       []string // allergens that were not there
	Ask       []string // what to ask the guest first
	Allergens part.Allergens
	Pours     []part.Pour
	Gone      []string // pours that were left out
	Way       string   // how it is mixed and served
	Facts     []string
	Link      string // to the bench
	Drawing   *part.Drawing
	Notice    string           // whether a guest tells it from the drink it comes from; empty if it comes from none
	Open      bool             // what a guest could notice stands open
	Moved     *part.Difference // what a guest could notice; nil if it is not drawn
}

// riffCaution is a caution and the drinks of the list that it goes with.
type riffCaution struct {
	behind.Caution
	With string
}

// relativeView is a proven drink near to the draft.
type relativeView struct {
	Name, Family, Source, Status, Distance string
	Bench, Walk                            string
}

// riffsView says everything about a list of riffs.
func (p *pages) riffsView(request *riff.Request, found *riff.Result, d *form.Guest, t *part.Tariff) (*riffsView, error) {
	from := request.Spec
	before, err := p.bar.Judge(from)
	if err != nil {
		return nil, err
	}
	name := from.Name
	if name == "" {
		name = "the draft"
	}
	v := &riffsView{Title: countOrNo(len(found.Riffs), "riff", "riffs") + " on " + name, Sub: d.Sentence(), Why: whyFew(found, request.Limit)}
	if x := found.Nearest; x != nil {
		v.Without = append(v.Without, said(words.Missed(string(found.Misses))+" (score "+words.Points(x.Score)+"): "+x.Text))
	}
	for _, x := range found.LeftOut {
		v.Without = append(v.Without, words.Sentence("without "+x.Profile.Name+", which "+x.Why))
	}
	if found.OfRest {
		v.Without = append(v.Without, words.Sentence(words.OfRest))
	}
	var specs []*flavor.Spec
	for i := range found.Riffs {
		x := &found.Riffs[i]
		one := p.drinkView(fmt.Sprintf("riff-%d", i+1), &x.Spec, from, d, i < mostDrawn, x.FamilyID)
		one.Name, one.Because = x.Name, words.Sentence(x.Why)
		one.Text, one.Effect = said(x.Recipe), said(x.Effect)
		one.Facts = []string{"Scores " + words.Points(x.Score) + " of 100, " + strings.ToLower(x.Family) + ".",
			words.Figure(x.Drink.ABV, 1) + "\u00a0% vol; the draft has " + words.Figure(before.Drink.ABV, 1) + ".", words.SentenceStart(p.drinkCounted(x.Drink)) + ".",
			words.Sentence(words.Steps(x.Distance) + " away")}
		one.Facts = append(one.Facts, t.Fact(&x.Spec)...)
		one.Notice = words.Notice(x.Notice)
		one.Open = i == 0
		if one.Moved, err = part.DifferenceOf(p.bar, one.ID+"-moved", from, &x.Spec); err != nil {
			return nil, err
		}
		v.Riffs = append(v.Riffs, one)
		specs = append(specs, &x.Spec)
	}
	v.Cautions = p.cautionsWith(specs, "riff", "riffs")
	near, err := p.bar.Relatives(from, shownRelatives, request.Guest)
	if err != nil {
		return nil, err
	}
	for i := range near {
		v.Relatives = append(v.Relatives, p.relativeView(&near[i], from, d))
	}
	return v, nil
}

// countOrNo counts, and says no for none.
func countOrNo(n int, one, many string) string {
	if n == 0 {
		return "No " + one
	}
	return words.Count(n, one, many)
}

// said makes a sentence in which no amount breaks.
func said(text string) string {
	return words.Sentence(words.Bound(text))
}

// drinkView says what all drinks of these pages have in common, beside the one
// that they come from.
func (p *pages) drinkView(id string, s, from *flavor.Spec, d *form.Guest, drawn bool, family string) riffView {
	v := riffView{ID: id, New: words.Of(s.NewAllergens(from)), Ask: s.Ask(d.Avoid), Allergens: part.AllergensOf(s, d.Avoid), Link: benchLink(s, d)}
	for _, p := range part.Compare(from.Pours, s.Pours) {
		one := part.Pour{Amount: p.After(), Name: p.Name()}
		switch {
		case p.Is == nil:
			if !slices.Contains(v.Gone, one.Name) {
				v.Gone = append(v.Gone, one.Name)
			}
			continue
		case p.Was == nil:
			one.Mark = "new"
		case p.Moved():
			one.Mark = words.Bound("was " + p.Before())
		}
		v.Pours = append(v.Pours, one)
	}
	v.Way = wayOf(s)
	if was := wayOf(from); was != v.Way && len(from.Pours) > 0 {
		v.Way += " (was " + was + ")"
	}
	if drawn {
		v.Drawing = part.DrawingOf(p.bar, id+"-strips", "Beside proven drinks of its family", s, ratio.EquivalentsOf(s), family)
	}
	return v
}

func wayOf(s *flavor.Spec) string { return string(s.Method) + ", " + string(s.Service) }

// whyFew says what was left out, if there are fewer than were asked for.
func whyFew(found *riff.Result, limit int) []string {
	if len(found.Riffs) >= limit {
		return nil
	}
	var out []string
	say := func(n int, one, many, what string) {
		if n > 0 {
			out = append(out, words.Count(n, one, many)+" "+what)
		}
	}
	n := &found.Refused
	say(n.ByGuest, "bottle", "bottles", "ruled out by the guest or a wish.")
	say(len(found.Labels), "bottle", "bottles", "of those whose label may clear it for the guest: it may carry what the guest avoids, or nobody has stated it.")
	say(n.Off, "draft", "drafts", "that stay out of balance at any amounts.")
	say(n.ByLimit, "draft", "drafts", "in balance, but too strong, too weak or too expensive.")
	say(n.Unmet, "draft", "drafts", "in balance, but not meeting a wish: leave one wish out to see them.")
	say(n.TooAlike, "draft", "drafts", "too near to the drink or to one that is listed.")
	return out
}

// cautionsWith gathers the cautions of drinks, each once, with the numbers of
// those that it goes with.
func (p *pages) cautionsWith(specs []*flavor.Spec, one, many string) []riffCaution {
	var out []riffCaution
	with := map[string][]string{}
	for i, s := range specs {
		for _, c := range p.bar.Cautions(s) {
			if with[c.Text] == nil {
				out = append(out, riffCaution{Caution: c})
			}
			with[c.Text] = append(with[c.Text], fmt.Sprint(i+1))
		}
	}
	for i := range out {
		numbers := with[out[i].Text]
		word := many
		if len(numbers) == 1 {
			word = one
		}
		out[i].With = words.Sentence(word + " " + words.List(numbers))
	}
	return out
}

func (p *pages) relativeView(x *precedent.Relative, from *flavor.Spec, d *form.Guest) relativeView {
	s := &x.Proven.Spec
	v := relativeView{Name: s.Name, Family: x.Proven.Family, Source: x.Proven.Source, Status: x.Proven.Status, Distance: words.Figure(x.Distance, 2), Bench: benchLink(s, d)}
	if f, ok := p.bar.Family(x.Proven.Family); ok {
		v.Family = f.Name
	}
	walk := url.Values{"from-text": {edit.Format(*from)}, "to-text": {edit.Format(*s)}}
	d.AddTo(walk)
	if x.Distance > 0 {
		v.Walk = form.Link("/riffs/walk", walk)
	}
	return v
}
