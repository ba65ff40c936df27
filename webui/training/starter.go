package training

import (
	"math"
	"net/http"
	"slices"
	"strings"

	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

const starterPath = "/training/starter"

// starterView is the page of the card for a new starter.
type starterView struct {
	Families []form.Option
	Trouble  string
	Card     *starterCard
}

// starterCard is a family on one page.
type starterCard struct {
	Name     string
	Ratio    string
	Source   string
	Usual    string
	Drawing  *part.Drawing
	Cautions []behind.Caution
	Alcohol  bool // an example holds alcohol
	Examples []starterExample
}

// starterExample is a drink of the family.
type starterExample struct {
	Name, From, Score, Method string
	Pours                     []string
	Allergens                 part.Allergens
}

// starter shows the card of a family: the one asked for, or the first that the
// menu has a drink of.
func (p *pages) starter(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	menu, err := p.house.Menu(r.Context())
	if err != nil {
		return err
	}
	v, id := &starterView{}, r.Form.Get("family")
	if own := part.FamiliesOf(p.bar, menu, ""); id == "" && len(own) > 0 {
		id = own[0].Value
	}
	for _, f := range p.bar.Families() {
		v.Families = append(v.Families, form.Option{Value: f.ID, Name: f.Name, Chosen: f.ID == id})
	}
	if id == "" {
		return p.Write(w, r, http.StatusOK, "starter", "layout", v)
	}
	specs := make([]template.Labelled, len(menu))
	for i := range menu {
		specs[i] = template.Labelled{Spec: menu[i].Spec, Family: menu[i].Family}
	}
	card, err := p.trainer.Card(id, specs)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Trouble = words.Sentence(faults[0].Message)
		return p.Write(w, r, http.StatusUnprocessableEntity, "starter", "layout", v)
	}
	if err != nil {
		return err
	}
	v.Card = p.starterCard(card)
	return p.Write(w, r, http.StatusOK, "starter", "layout", v)
}

func (p *pages) starterCard(c *drill.Card) *starterCard {
	v := &starterCard{Name: c.Name, Ratio: c.Ratio, Source: words.Sentence(c.Source), Usual: c.Usual, Drawing: cardDrawing(c)}
	for i := range c.Examples {
		x := &c.Examples[i]
		e := starterExample{Name: x.Spec.Name, From: say.It("training.of-the-house"), Score: words.Points(x.Score), Method: string(x.Spec.Method) + ", " + string(x.Spec.Service),
			Allergens: part.AllergensOf(&x.Spec, nil)}
		if x.Proven {
			e.From = say.It("training.proven")
		}
		shown := part.SpecInUnits(p.house.Settings(), &x.Spec)
		for k := range shown.Pours {
			e.Pours = append(e.Pours, part.Amount(&shown.Pours[k])+" "+shown.Pours[k].Profile.Name)
		}
		v.Examples = append(v.Examples, e)
		v.Alcohol = v.Alcohol || kitchen.HoldsAlcohol(&x.Spec)
		for _, c := range p.bar.Cautions(&x.Spec) {
			v.Cautions = warn(v.Cautions, c)
		}
	}
	return v
}

// warn adds a caution to others. Of two that begin alike, as those of a drink with alcohol
// and of one without do, the one that says more stays.
func warn(list []behind.Caution, c behind.Caution) []behind.Caution {
	at := slices.IndexFunc(list, func(x behind.Caution) bool {
		return strings.HasPrefix(x.Text, c.Text) || strings.HasPrefix(c.Text, x.Text)
	})
	if at < 0 {
		return append(list, c)
	}
	if len(c.Text) > len(list[at].Text) {
		list[at] = c
	}
	return list
}

// drawnML is how much of a drink is drawn, before ice.
const drawnML = 100.0

// cardDrawing draws the ratio as it is handed down in the range that proven
// drinks keep, each part by itself.
func cardDrawing(c *drill.Card) *part.Drawing {
	var strips []draw.Strip
	for _, part := range c.Parts {
		middle := drawnML * part.Fitted
		strip := draw.Strip{Axis: part.Axis, ML: drawnML * part.Handed,
			Range: draw.Range{Has: true, Low: middle * part.Low, Centre: middle, High: math.Min(drawnML, middle*part.High)}}
		strips = append(strips, strip)
	}
	return part.StripsView("strips", say.It("training.usual-ratio"), strips)
}
