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
	"counterpour/webui/say"
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
		name = say.It("riffs.the-draft")
	}
	v := &riffsView{Title: say.It("riffs.riffs-on", "Riffs", len(found.Riffs), "Name", name), Sub: d.Sentence(), Why: whyFew(found, request.Limit)}
	if x := found.Nearest; x != nil {
		v.Without = append(v.Without, said(say.It("riffs.missed-with-its-score", "Missed", words.Missed(string(found.Misses)), "Score", words.Points(x.Score), "Riff", x.Text)))
	}
	for _, x := range found.LeftOut {
		v.Without = append(v.Without, words.Sentence(say.It("riffs.without", "Pour", x.Profile.Name, "Why", x.Why)))
	}
	if found.OfRest {
		v.Without = append(v.Without, words.Sentence(words.OfRest()))
	}
	var specs []*flavor.Spec
	for i := range found.Riffs {
		x := &found.Riffs[i]
		one := p.drinkView(fmt.Sprintf("riff-%d", i+1), &x.Spec, from, d, i < mostDrawn, x.FamilyID)
		one.Name, one.Because = x.Name, words.Sentence(x.Why)
		one.Text, one.Effect = said(x.Recipe), said(x.Effect)
		one.Facts = []string{say.It("riffs.scores-in-family", "Score", words.Points(x.Score), "Family", strings.ToLower(x.Family)),
			say.It("riffs.strength-beside-draft", "Strength", words.Figure(x.Drink.ABV, 1), "Draft", words.Figure(before.Drink.ABV, 1)),
			say.It("riffs.that-is", "Counted", words.SentenceStart(p.drinkCounted(x.Drink))),
			say.It("riffs.steps-away", "Steps", words.Figure(x.Distance, 1))}
		one.Facts = append(one.Facts, t.Fact(&x.Spec)...)
		one.Notice = words.Notice(x.Notice)
		one.Open = i == 0
		if one.Moved, err = part.DifferenceOf(p.bar, one.ID+"-moved", from, &x.Spec); err != nil {
			return nil, err
		}
		v.Riffs = append(v.Riffs, one)
		specs = append(specs, &x.Spec)
	}
	v.Cautions = p.cautionsWith(specs, func(one bool, numbers string) string {
		return say.It("riffs.caution-of-riffs", "One", one, "Numbers", numbers)
	})
	near, err := p.bar.Relatives(from, shownRelatives, request.Guest)
	if err != nil {
		return nil, err
	}
	for i := range near {
		v.Relatives = append(v.Relatives, p.relativeView(&near[i], from, d))
	}
	return v, nil
}

// said makes a sentence in which no amount breaks.
func said(text string) string {
	return words.Sentence(words.Bound(text))
}

// drinkView says what all drinks of these pages have in common, beside the one
// that they come from.
func (p *pages) drinkView(id string, s, from *flavor.Spec, d *form.Guest, drawn bool, family string) riffView {
	v := riffView{ID: id, New: words.Of(s.NewAllergens(from)), Ask: s.Ask(d.Avoid), Allergens: part.AllergensOf(s, d.Avoid), Link: p.benchLink(s, d)}
	for _, p := range part.Compare(from.Pours, s.Pours) {
		one := part.Pour{Amount: p.After(), Name: p.Name()}
		switch {
		case p.Is == nil:
			if !slices.Contains(v.Gone, one.Name) {
				v.Gone = append(v.Gone, one.Name)
			}
			continue
		case p.Was == nil:
			one.Mark = say.It("riffs.new")
		case p.Moved():
			one.Mark = words.Bound(say.It("riffs.was", "Amount", p.Before()))
		}
		v.Pours = append(v.Pours, one)
	}
	v.Way = wayOf(s)
	if was := wayOf(from); was != v.Way && len(from.Pours) > 0 {
		v.Way = say.It("riffs.way-was", "Way", v.Way, "Was", was)
	}
	if drawn {
		v.Drawing = part.DrawingOf(p.bar, id+"-strips", say.It("riffs.beside-its-family"), s, ratio.EquivalentsOf(s), family)
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
	add := func(n int, what string) {
		if n > 0 {
			out = append(out, what)
		}
	}
	n := &found.Refused
	add(n.ByGuest, say.It("riffs.by-guest", "Bottles", n.ByGuest))
	add(len(found.Labels), say.It("riffs.of-unread-labels", "Bottles", len(found.Labels)))
	add(n.Off, say.It("riffs.out-of-balance", "Drafts", n.Off))
	add(n.ByLimit, say.It("riffs.over-a-limit", "Drafts", n.ByLimit))
	add(n.Unmet, say.It("riffs.not-meeting-a-wish", "Drafts", n.Unmet))
	add(n.TooAlike, say.It("riffs.too-alike", "Drafts", n.TooAlike))
	return out
}

// cautionsWith gathers the cautions of drinks, each once, with the numbers of
// those that it goes with.
func (p *pages) cautionsWith(specs []*flavor.Spec, said func(one bool, numbers string) string) []riffCaution {
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
		out[i].With = said(len(numbers) == 1, words.List(numbers))
	}
	return out
}

func (p *pages) relativeView(x *precedent.Relative, from *flavor.Spec, d *form.Guest) relativeView {
	s := &x.Proven.Spec
	v := relativeView{Name: s.Name, Family: x.Proven.Family, Source: x.Proven.Source, Status: x.Proven.Status, Distance: words.Figure(x.Distance, 2), Bench: p.benchLink(s, d)}
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
