package training

import (
	"fmt"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// questionView is a round as a form.
type questionView struct {
	Kind    string
	Text    string
	Hint    string
	Size    string
	Round   string // the request, sealed: it alone would give the answer away
	Drinks  []roundDrink
	Options []form.Option
	Aromas  []form.Option
	Sayings []saying
	ABV     string
	Volume  string
	Trouble string

	Offered part.Allergens // of the covers offered
	Pours   bool           // covers are offered
}

// saying is one thing to say of a drink that is off.
type saying struct {
	form.Option
	Plain string // the axis, beside the words of a guest
}

// roundDrink is a drink of a question.
type roundDrink struct {
	Field  string
	Name   string
	Method string
	Pours  []roundPour
	Places []form.Option

	Allergens part.Allergens
}

// roundPour is a pour, and the field that may move it.
type roundPour struct{ Field, Amount, Name, Value string }

// hintOf says by what an answer is judged.
func hintOf(k drill.Kind) string {
	switch k {
	case drill.KindFault:
		return say.It("training.hint-fault")
	case drill.KindMend:
		return say.It("training.hint-mend")
	case drill.KindOrder:
		return say.It("training.hint-order")
	case drill.KindGuess:
		return say.It("training.hint-guess")
	case drill.KindCover:
		return say.It("training.hint-cover")
	case drill.KindFamily:
		return say.It("training.hint-family")
	case drill.KindHand:
		return say.It("training.hint-hand")
	}
	return ""
}

func (p *pages) questionOf(r *drill.Round, f form.Values) *questionView {
	v := &questionView{Kind: string(r.Request.Kind), Text: words.Sentence(words.Bound(r.Question)), Hint: hintOf(r.Request.Kind),
		Size: stepsOf(r.Request.Kind, r.Size), Round: p.seal.seal(r)}
	for i := range r.Specs {
		v.Drinks = append(v.Drinks, drinkOf(p.house.Settings(), &r.Specs[i], i, f))
	}
	offered := offeredIn(r)
	v.Offered, v.Pours = part.AllergensOf(&offered, nil), len(offered.Pours) > 0
	for i, o := range r.Options {
		v.Options = append(v.Options, f.Option("option", strconv.Itoa(i), words.Bound(o.Label)))
	}
	switch r.Request.Kind {
	case drill.KindFault:
		for _, s := range drill.Sayings() {
			v.Sayings = append(v.Sayings, saying{f.Option("say", saidValue(&s), s.Guest), s.Plain})
		}
	case drill.KindGuess:
		v.ABV, v.Volume = f.Get("abv"), f.Get("volume")
	case drill.KindCover:
		for _, family := range flavor.AromaFamilies() {
			v.Aromas = append(v.Aromas, f.Option("lost", family.ID, family.ID))
		}
	}
	return v
}

// offeredIn is all that a round offers to pour, as one drink.
func offeredIn(r *drill.Round) (all flavor.Spec) {
	for _, o := range r.Options {
		all.Pours = append(all.Pours, o.Pours...)
	}
	return all
}

// saidValue is what is said of a drink as forms send it: "sour-much".
func saidValue(s *drill.Complaint) string {
	if s.High {
		return s.Axis.String() + "-much"
	}
	return s.Axis.String() + "-little"
}

// saidBy is what a form says of a drink.
func saidBy(f form.Values) (drill.Complaint, bool) {
	value := f.Get("say")
	if value == "" { // the two fields of pages that were open before there was one
		value = f.Get("of") + "-" + f.Get("way")
	}
	for _, s := range drill.Sayings() {
		if saidValue(&s) == value {
			return s, true
		}
	}
	return drill.Complaint{}, false
}

func drinkOf(said house.Settings, s *flavor.Spec, at int, f form.Values) roundDrink {
	d := roundDrink{Field: fmt.Sprintf("place-%d", at), Name: s.Name, Method: string(s.Method) + ", " + string(s.Service), Allergens: part.AllergensOf(s, nil)}
	for i := range s.Pours {
		p := roundPour{Field: fmt.Sprintf("pour-%d", i), Amount: part.Amount(&s.Pours[i]), Name: s.Pours[i].Profile.Name}
		if p.Value = said.Figures(p.Amount); f.Has(p.Field) {
			p.Value = f.Get(p.Field)
		}
		d.Pours = append(d.Pours, p)
	}
	for i, name := range []string{say.It("training.least"), say.It("training.between"), say.It("training.most")} {
		d.Places = append(d.Places, f.Option(d.Field, strconv.Itoa(i), name))
	}
	return d
}

// answerIn reads the answer to a round. What is missing or cannot be read is a
// fault.
func answerIn(f form.Values, r *drill.Round) (a drill.Answer, err error) {
	switch r.Request.Kind {
	case drill.KindFault:
		said, ok := saidBy(f)
		if !ok {
			return a, form.Missing("answer", say.It("training.say-what-a-guest-would"))
		}
		a.Axis, a.High = said.Axis, said.High
	case drill.KindMend:
		return moveIn(f, r)
	case drill.KindOrder:
		return orderIn(f, len(r.Specs))
	case drill.KindGuess:
		if a.ABV, err = f.Number("abv", say.It("training.the-strength"), "% vol"); err == nil {
			a.Volume, err = f.Number("volume", say.It("training.the-volume"), "mL")
		}
	default:
		if a.Option, err = strconv.Atoi(f.Get("option")); err != nil {
			return a, form.Missing("option", say.It("training.choose-an-answer"))
		}
		for _, id := range f["lost"] {
			family, ok := flavor.ParseAromaFamily(id)
			if !ok {
				return a, fmt.Errorf("%w: no aroma is called %q", form.ErrUnreadable, id)
			}
			a.Lost = append(a.Lost, family)
		}
	}
	return a, err
}

// moveIn finds the one pour that was written anew.
func moveIn(f form.Values, r *drill.Round) (a drill.Answer, err error) {
	a.Pour = -1
	for i := range r.Specs[0].Pours {
		pour := &r.Specs[0].Pours[i]
		text := f.Get(fmt.Sprintf("pour-%d", i))
		if text == part.Amount(pour) {
			continue
		}
		amount, err := amountIn(text, pour)
		if err != nil {
			return a, err
		}
		if amount == pour.Amount {
			continue
		}
		if a.Pour >= 0 {
			return a, form.Missing("pours", say.It("training.two-amounts-changed"))
		}
		a.Pour, a.Amount = i, amount
	}
	if a.Pour < 0 {
		return a, form.Missing("pours", say.It("training.nothing-changed"))
	}
	return a, nil
}

// amountIn reads an amount in the unit of a pour. A number alone is in that
// unit.
func amountIn(text string, pour *flavor.Pour) (float64, error) {
	unreadable := form.Missing("pours", say.It("training.no-amount", "Typed", strconv.Quote(text), "Pour", pour.Profile.Name, "Amount", part.Amount(pour)))
	if words := strings.Fields(text); len(words) > 0 && words[0] == "0" {
		return 0, nil // it is left out
	}
	amount, unit, ok := draft.ParseAmount(text)
	if !ok {
		return 0, unreadable
	}
	if unit == pour.Unit || unit == "" {
		return amount, nil
	}
	ml, err := measure.ToML(amount, unit, pour.Profile)
	if err != nil {
		return 0, err
	}
	per, ok := measure.MLPerUnit(pour.Unit, pour.Profile)
	if !ok || per == 0 {
		return 0, unreadable
	}
	return ml / per, nil
}

// orderIn reads which drink goes where.
func orderIn(f form.Values, n int) (a drill.Answer, err error) {
	a.Order = make([]int, n)
	taken := make([]bool, n)
	for i := range n {
		place, err := strconv.Atoi(f.Get(fmt.Sprintf("place-%d", i)))
		if err != nil || place < 0 || place >= n {
			return a, form.Missing("order", say.It("training.give-each-its-place"))
		}
		if taken[place] {
			return a, form.Missing("order", say.It("training.two-share-a-place"))
		}
		taken[place], a.Order[place] = true, i
	}
	return a, nil
}
