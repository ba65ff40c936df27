package specs

import (
	"math"
	"net/http"
	"net/url"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/webui/access"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// card is one spec, to be printed on A6.
func (p *pages) card(w http.ResponseWriter, r *http.Request) error {
	menu, err := p.house.Menu(r.Context())
	if err != nil {
		return err
	}
	for i := range menu {
		if menu[i].Slug != r.PathValue("slug") {
			continue
		}
		v, err := p.spec(&menu[i], anybody())
		if err != nil {
			return err
		}
		share, err := part.ShareOf(access.At(r, "/specs/"+v.Slug, nil), v.Name)
		if err != nil {
			return err
		}
		return p.Write(w, r, http.StatusOK, "card", "layout", cardPage{p.house.About(), v, share})
	}
	return frame.ErrNotFound
}

// draftCard is a draft of the bench as a card. One with faults goes back to the
// bench, which says what they are.
func (p *pages) draftCard(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	text := form.Lines(r.Form.Get("text"))
	bench := "/bench?" + url.Values{"text": {text}}.Encode()
	s, err := p.bar.Read(text)
	if len(flavor.DataFaultsOf(err)) > 0 {
		http.Redirect(w, r, bench, http.StatusSeeOther)
		return nil
	}
	if err != nil {
		return err
	}
	if s.Name == "" {
		s.Name = say.It("specs.without-a-name")
	}
	v, err := p.spec(&behind.HouseSpec{Spec: s}, anybody())
	if err != nil {
		return err
	}
	v.Family, v.Reads, v.Bench = v.Reads, "", bench
	return p.Write(w, r, http.StatusOK, "card", "layout", cardPage{About: p.house.About(), Card: v})
}

// cardPage is the page of one card.
type cardPage struct {
	About string
	Card  specView
	Share *part.Share // how a camera finds its spec; nil for a draft
}

// collection is every spec that a query lets through, to be printed on A4.
func (p *pages) collection(w http.ResponseWriter, r *http.Request) error {
	q, err := readSift(r)
	if err != nil {
		return err
	}
	v, err := p.specsOf(r.Context(), &q, "/specs/print", onAPrinted)
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "print", "layout", v)
}

// figures fills in what is measured of the finished drink.
func (v *specView) figures(d *mix.Drink, said house.Settings) {
	v.Strength, v.Volume = said.Figures(readingOf("abv_pct", d)), said.Figures(readingOf("volume_ml", d))
	v.Standard, v.Country = standardOf(said, d.After.Ethanol)
}

// readingOf says what is read off a drink under a key, on a line that does not
// break; empty for a key that is none.
func readingOf(key string, d *mix.Drink) string {
	r, ok := mix.ReadoutOf(key)
	if !ok {
		return ""
	}
	return words.Reading(&r, d)
}

// standardOf is how many standard drinks there are in so many grams of ethanol, and
// whose.
func standardOf(said house.Settings, ethanolG float64) (count, country string) {
	s := said.Standard(ethanolG)
	return said.Figures(words.Figure(s.Count, 1)), s.Country
}

// standardSaid says what one standard drink is, where and by whom.
func standardSaid(said house.Settings) string {
	s := said.Standard(0)
	return say.It("specs.standard-drink", "Grams", said.Figures(words.Plain(math.Round(10*s.Grams)/10)), "Country", s.Country, "Source", s.Source)
}
