package part

import (
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/riff"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Offer is a drink to offer if no cover keeps the original.
type Offer struct {
	Name, Address string
	Recipe        string // for a riff: how it differs from the original
	Notice        string // whether a guest notices the difference from the original
	Draft         string
}

// OfferOf describes the nearest drink of a menu; nil if there is none. The address is
// that of its card, or of the bench if it is not on the menu, for the guest.
func OfferOf(said house.Settings, menu []behind.HouseSpec, o *instead.Offered, guest *form.Guest) *Offer {
	if o == nil {
		return nil
	}
	v := &Offer{Name: o.Spec.Name, Notice: words.Notice(o.Notice), Draft: DraftInUnits(said, o.Spec)}
	v.Address = BenchAddress(v.Draft, guest)
	for i := range menu {
		if menu[i].Spec.Name == o.Spec.Name {
			v.Address = SpecAddress(menu[i].Slug, guest)
		}
	}
	return v
}

// SpecAddress returns the address of the page of a spec, for a guest.
func SpecAddress(slug string, guest *form.Guest) string {
	return guest.Address("/specs/" + url.PathEscape(slug))
}

// BenchAddress returns the address of the bench with a draft, for a guest.
func BenchAddress(text string, guest *form.Guest) string {
	v := url.Values{"text": {text}}
	guest.AddTo(v)
	return form.Link("/bench", v)
}

// RiffOf describes a riff to offer; nil if there is none.
func RiffOf(said house.Settings, r *riff.Riff, guest *form.Guest) *Offer {
	if r == nil {
		return nil
	}
	v := &Offer{Name: r.Name, Recipe: words.Sentence(r.Recipe), Notice: words.Notice(r.Notice), Draft: DraftInUnits(said, &r.Spec)}
	v.Address = BenchAddress(v.Draft, guest)
	return v
}

// LeftOutLine describes the drink without everything that had to go and without a
// substitute, and says so if it is another one. It is "" if there is none, or if a guest will notice and the
// chosen cover is nearer. Where nothing else is offered it is alone. It tells the amounts that
// change, in the units of the house: the score is theirs.
func LeftOutLine(said house.Settings, removed []*flavor.Profile, c, chosen *cover.Cover, alone bool) string {
	if c = evening.Without(c, chosen); c == nil {
		return ""
	}
	score := words.Points(c.Score)
	if c.Beside > 0 {
		score = "" // it holds a soft drink against drinks with alcohol
	}
	return say.It("part.left-out", "Alone", alone, "What", words.List(NamesOf(removed)), "Another", c.Distance > cover.LastJND, "Moves", strings.Join(shifts(coverInUnits(said, c)), ", "),
		"Notice", words.Notice(c.Notice), "Score", score)
}

// AlsoGone lists what had to go for the guest, beside what is missing.
func AlsoGone(removed, missing []*flavor.Profile) []string {
	return NamesOf(slices.DeleteFunc(slices.Clone(removed), func(p *flavor.Profile) bool { return slices.Contains(missing, p) }))
}

// OutLine says which bottles of a drink have run out, of a list of ids; "" if none has.
func OutLine(s *flavor.Spec, out []string) string {
	gone := OutOf(s, out)
	if len(gone) == 0 {
		return ""
	}
	return say.It("part.out-now", "Names", words.List(NamesOf(gone)))
}

// OutOf lists the bottles of a drink that are among the ids of what has run out.
func OutOf(s *flavor.Spec, out []string) []*flavor.Profile {
	return slices.DeleteFunc(Bottles(s), func(p *flavor.Profile) bool { return !slices.Contains(out, p.ID) })
}

// NamesOf lists the names of ingredients.
func NamesOf(list []*flavor.Profile) []string {
	var out []string
	for _, p := range list {
		out = append(out, p.Name)
	}
	return out
}

// Strength formats the strength of a drink, for a guest with a limit.
func Strength(bar behind.Bar, s *flavor.Spec) (string, error) {
	r, err := bar.Judge(s)
	if err != nil {
		return "", err
	}
	return say.It("part.strength", "Strength", words.Figure(r.Drink.ABV, 1)), nil
}
