package specs

import (
	"context"
	"net/url"
	"slices"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// nowView is how a spec is poured now, for the guest if the page is shown for one.
type nowView struct {
	Title   string
	Lines   []string
	Or      string          // what else may be poured than the cover; empty if nothing is
	Carries *part.Allergens // of what is poured without a pour of it; nil where Cover says so, or it is as written
	Made    string          // how strong what is poured is; empty if it is poured as written
	Labels  []labelLink     // that keep it from the guest until they are read
	Cover   *part.Cover     // what is poured instead of what is missing; nil if nothing is
	Bad     bool            // it cannot be poured now
	Tonight string          // address of the same among the menu
}

// labelLink leads to where a label that was read is written down, and says what it decides.
type labelLink struct{ Name, Why, Address string }

// fillNow says how the spec is poured now, as the menu of tonight says it, and which of its
// pours are not. For everybody it says so only if something is missing.
func (p *pages) fillNow(ctx context.Context, v *specPage) error {
	shift, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return err
	}
	at := slices.IndexFunc(shift.Menu, func(m behind.HouseSpec) bool { return m.Slug == v.Slug })
	if at < 0 || !v.Guest.Ticked() && v.Out == "" {
		return nil
	}
	g := v.Guest.Limits()
	now, err := behind.EveningOf(ctx, p.bar, shift, g, part.MostParts)
	if err != nil {
		return err
	}
	d := &now.Drinks[at]
	for i := range d.Spec.Pours {
		if i < len(v.Pours) {
			v.Pours[i].Gone = goneOf(d, d.Spec.Pours[i].Profile, v.Guest)
		}
	}
	v.Now = &nowView{Title: say.It("specs.tonight"), Bad: d.State == evening.Missing || d.State == evening.NotFor,
		Tonight: v.Guest.Address("/tonight") + "#drink-" + v.Slug}
	if v.Guest.Ticked() {
		v.Now.Title = say.It("specs.for-this-guest")
	}
	v.Now.say(d, p.house.Settings())
	if d.Waits() {
		for _, b := range d.Unread {
			of := url.Values{"of": {b.ID}}
			v.Guest.AddTo(of)
			v.Now.Labels = append(v.Now.Labels, labelLink{b.Name, g.ToRead(b), form.Link(part.LabelPath, of)})
		}
	}
	if d.State == evening.Covered {
		if chosen := evening.Chosen(d.Touched); chosen != nil {
			shown := part.CoverOf(p.house.Settings(), d.Spec, chosen, d.Touched.ScoreBefore, g.Avoid)
			v.Now.Cover = &shown
		}
		return p.fillMade(v.Now, d, &g)
	}
	return nil
}

// fillMade says how strong the drink is as it is poured, and what is in it if that is the
// drink without a pour.
func (p *pages) fillMade(v *nowView, d *evening.Drink, g *guest.Guest) (err error) {
	made := evening.Chosen(d.Touched)
	if made == nil {
		if made = d.Touched.LeftOut; made == nil {
			return nil
		}
		carries := part.AllergensOf(&made.Spec, g.Avoid)
		v.Carries = &carries
	}
	v.Made, err = part.Strength(p.bar, &made.Spec)
	return err
}

// say puts what becomes of a drink in sentences.
func (v *nowView) say(d *evening.Drink, said house.Settings) {
	t := d.Touched
	switch d.State {
	case evening.Ready:
		v.Lines = []string{say.It("specs.as-written")}
	case evening.NotFor:
		v.Lines = []string{words.Sentence(say.It("specs.not-for-this-guest", "Because", d.Because))}
	case evening.Missing:
		v.Lines = []string{say.It("specs.nothing-keeps-it", "Missing", words.List(part.NamesOf(t.Missing)))}
	case evening.Covered:
		if gone := part.AlsoGone(t.Removed, t.Missing); len(gone) > 0 {
			v.Lines = append(v.Lines, say.It("specs.leave-out", "Pours", words.List(gone)))
		}
		switch line := part.LeftOutLine(said, t.Removed, t.LeftOut, evening.Chosen(t), t.Chosen < 0); {
		case line == "":
		case t.Chosen < 0:
			v.Lines = append(v.Lines, line)
		default:
			v.Or = line
		}
	}
}

// goneOf says why a pour is not poured now; empty if it is.
func goneOf(d *evening.Drink, b *flavor.Profile, who *form.Guest) string {
	g := who.Limits()
	switch t := d.Touched; {
	case t != nil && slices.Contains(t.Missing, b):
		return say.It("specs.missing")
	case !g.Accepts(b):
		return g.Objection(b)
	}
	return ""
}
