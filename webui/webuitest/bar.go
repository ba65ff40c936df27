package webuitest

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/part"
)

// The shelf of the fake bar.
var (
	Gin    = NewProfile("london-dry-gin", "London dry gin", flavor.ClassGin)
	Lemon  = NewProfile("lemon-juice", "lemon juice", flavor.ClassSourJuice)
	Syrup  = NewProfile("simple-syrup", "simple syrup", flavor.ClassSyrup)
	Orgeat = NewProfile("orgeat", "orgeat", flavor.ClassSpicedSyrup, flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains},
		flavor.AllergenMark{Allergen: flavor.Soybeans, Certainty: flavor.MayContain})
	Sesame = NewProfile("sesame-orgeat", "sesame orgeat", flavor.ClassSpicedSyrup, flavor.AllergenMark{Allergen: flavor.Sesame, Certainty: flavor.Contains})
	white  = withPiece(NewProfile("egg-white", "egg white", flavor.ClassEgg, flavor.AllergenMark{Allergen: flavor.Eggs, Certainty: flavor.Contains}))
	bottle = unstated(NewProfile("unlabelled-liqueur", "unlabelled liqueur", flavor.ClassLiqueur))
)

// shelf is all that the fake bar knows.
var shelf = []*flavor.Profile{Gin, Lemon, Syrup, Orgeat, Sesame, white, bottle, Falernum, Almond, Clove, Spare}

var aliases = map[string]*flavor.Profile{"gin": Gin, "nut syrup": Orgeat}

// NewProfile is an ingredient whose allergens are stated.
func NewProfile(id, name string, class flavor.Class, marks ...flavor.AllergenMark) *flavor.Profile {
	return &flavor.Profile{ID: id, Name: name, Class: class, AllergensKnown: true, AllergenMarks: marks, DensityGPerML: 1}
}

func withPiece(p *flavor.Profile) *flavor.Profile {
	p.Yields = []flavor.Yield{{Unit: flavor.Piece, Amount: flavor.Figure{Value: 30}}}
	return p
}

func unstated(p *flavor.Profile) *flavor.Profile {
	p.AllergensKnown = false
	return p
}

// Bar knows a few bottles and one family. A draft with less than 20 mL of
// lemon is off, and more lemon mends it. A drink named Broken fails.
type Bar struct{}

var _ behind.Bar = Bar{}

// ErrBroken is how the fake bar fails.
var ErrBroken = errors.New("the pump is broken")

func (Bar) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	m := flavor.Match{Asked: written, How: flavor.MatchExact}
	for _, p := range shelf {
		if flavor.NormaliseName(p.Name) == flavor.NormaliseName(written) {
			return p, m, nil
		}
	}
	if p, ok := aliases[written]; ok {
		return p, flavor.Match{Asked: written, How: flavor.MatchAlias}, nil
	}
	return nil, m, &flavor.DataFault{Kind: flavor.ErrUnknown, Value: written, Suggest: []string{"lemon juice"},
		Message: "unknown ingredient \"" + written + "\"; nearest: lemon juice"}
}

func (b Bar) Named(written string) (*flavor.Profile, error) {
	p, _, err := b.Resolve(written)
	return p, err
}

func (b Bar) Read(text string) (flavor.Spec, error) {
	return reading.Read(text, b)
}

// ReadRest takes a spec with any pour as one that can be weighed.
func (b Bar) ReadRest(text string) (reading.Reading, error) {
	r, err := reading.Resolve(draft.Parse(text), b)
	if err != nil || len(r.Faults) > 0 && len(r.Spec.Pours) == 0 {
		return reading.Reading{}, errors.Join(err, r.Err())
	}
	return r, nil
}

// Others are the shelf's other bottles of the same class.
func (Bar) Others(_ string, read *flavor.Profile, n int) (out []*flavor.Profile) {
	for _, p := range shelf {
		if p.Class == read.Class && p != read && len(out) < n {
			out = append(out, p)
		}
	}
	return out
}

// Beside is syrup, since every drink of the fake bar pours it, unless the part holds it.
func (Bar) Beside(s *flavor.Spec, _ float64, n int) ([]*flavor.Profile, error) {
	if n < 1 || indexOf(s.Pours, Syrup) >= 0 {
		return nil, nil
	}
	return []*flavor.Profile{Syrup}, nil
}

// UsualML knows of gin alone how much is poured.
func (Bar) UsualML(p *flavor.Profile) float64 {
	if p == Gin {
		return 60
	}
	return 0
}

// Known is the shelf.
func (b Bar) Known() naming.Finder { return b }

func (b Bar) Remedies(r remedy.Request) ([]remedy.Remedies, error) { return remedy.For(b, r) }

func (b Bar) MeaningsOf(r *reading.Reading, line int, g guest.Guest) remedy.Meanings {
	return remedy.MeaningsOf(b, r, line, g)
}

func (b Bar) Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	r, err := b.Judge(s)
	if err != nil {
		return nil, nil, err
	}
	if at := indexOf(s.Pours, Lemon); at >= 0 && s.Pours[at].ML < 20 {
		return b.tooSweet(s, r, at)
	}
	return r, nil, nil
}

func (Bar) Judge(s *flavor.Spec) (*balance.Result, error) {
	switch s.Name {
	case "Broken":
		return nil, ErrBroken
	case "Weightless":
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Message: "there is nothing in the drink to weigh; add a pour that has"}
	}
	r := &balance.Result{Drink: &mix.Drink{VolumeML: 166.6, ABV: 14.52, SugarPer100: 8.61, AcidPer100: 0.886, Bitter: 0.2,
		DilutionPct: 51.4, TemperatureC: -6.4, EnergyKcal: 183, After: mix.Ledger{Ethanol: 19.1},
		PlusMinus: mix.PlusMinus{VolumeML: 6.1, ABV: 0.55, SugarPer100: 0.4, AcidPer100: 0.06, DilutionPct: 4}},
		Judgement: weigh.Judgement{Score: 94.2, Equivalents: ratio.Equivalents{60.6, 23.4, 29.8, 0.9, 0},
			Fits: []weigh.Fit{{ID: "sour", Name: "Sour", Probability: 0.96, Score: 95, Stray: strayOf(0.62)}, {ID: "daisy", Name: "Daisy", Probability: 0.03}}}}
	r.Verdict = weigh.Balanced
	return r, nil
}

// strayOf returns how far a drink lies out that a share of good drinks lies further than,
// where they stray in two coordinates, hardly more often far than a normal one.
func strayOf(tail float64) weigh.Stray {
	return weigh.Stray{Squared: -2 * math.Log(tail), Coordinates: 2, Freedom: 1e6}
}

// Explain says more than a page shows.
func (Bar) Explain(*flavor.Spec) ([]arithmetic.Step, error) {
	steps := []arithmetic.Step{{Stage: arithmetic.Pour, Text: "2 oz gin count as 60.6 mL of 40 % spirit"}}
	for i := range 40 {
		steps = append(steps, arithmetic.Step{Stage: arithmetic.Ratio, Text: fmt.Sprintf("ratio %d", i+1)})
	}
	return steps, nil
}

func (Bar) tooSweet(s *flavor.Spec, r *balance.Result, at int) (*balance.Result, []balance.Fix, error) {
	r.Judgement.Score, r.Judgement.Equivalents[ratio.Sour], r.Verdict = 26.7, 7.4, weigh.Off
	r.Judgement.Fits[0].Stray = strayOf(0.004)
	r.Faults = []balance.Fault{{Axis: ratio.Sour, Deviation: 4.8, PlusMinus: 0.5, Text: "about ½ oz too little lemon juice for this much simple syrup"}}
	mended := s.Clone()
	mended.Pours[at].Amount, mended.Pours[at].Unit, mended.Pours[at].ML = 0.75, flavor.Ounce, 22.2
	return r, []balance.Fix{{Spec: mended, Score: 92.4, Text: "pour ¾ oz lemon juice instead of ¼ oz"}}, nil
}

func (b Bar) Cover(_ context.Context, r behind.CoverRequest) (*service.CoverAnswer, error) {
	at := -1
	for i := range r.Spec.Pours {
		if p := r.Spec.Pours[i].Profile; p.ID == r.Missing[0] || p.Name == r.Missing[0] {
			at = i
		}
	}
	if at < 0 {
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Value: r.Missing[0], Message: r.Missing[0] + " is not a pour of this drink; name one that is"}
	}
	removed := []*flavor.Profile{r.Spec.Pours[at].Profile}
	for i := range r.Spec.Pours {
		if p := r.Spec.Pours[i].Profile; i != at && slices.Contains(r.Missing[1:], p.ID) && !slices.Contains(removed, p) {
			removed = append(removed, p)
		}
	}
	result := &cover.Result{ScoreBefore: 94.2, Removed: removed}
	a := &service.CoverAnswer{Missing: result.Removed, Result: result}
	if slices.Contains(r.Guest.Avoid, string(flavor.Sesame)) {
		near := b.Examples()[0]
		a.Barred = []barred.Way{{Out: removed[0], Parts: []*flavor.Profile{Sesame}, Reason: barred.ByGuest, Why: "contains sesame"}}
		result.IfLabelClears = []cover.Cover{{Parts: r.Spec.Pours[at : at+1], Spec: *r.Spec, Read: removed, ReadFor: []string{"names no sesame"}}}
		a.Instead = &service.Instead{Menu: &instead.Offered{Spec: &near, Distance: 6, Notice: sense.NoticeOf(6, false)},
			Riff: &riff.Riff{Listed: station.Listed{Name: "Riff with syrup", Spec: near}, Recipe: "pour simple syrup", Distance: 5, Notice: sense.NoticeOf(5, false)}}
		return a, nil
	}
	result.Near = true
	with := r.Spec.Clone()
	with.Pours[at] = flavor.Pour{Profile: Sesame, Amount: 0.5, Unit: flavor.Ounce, ML: 14.8}
	result.Covers = []cover.Cover{{Parts: with.Pours[at : at+1], Spec: with, Distance: 1.27, Notice: sense.NoticeOf(1.27, false), Score: 88, ABVChange: -0.2, VolumeChange: 1.2,
		Lost: []flavor.AromaFamily{flavor.Nut}, Gained: []flavor.AromaFamily{flavor.Vegetal}, NewAllergens: []flavor.Allergen{flavor.Sesame},
		Text: "½ oz sesame orgeat: same drink, softer nut"}}
	left := r.Spec.Clone()
	left.Pours = slices.Delete(left.Pours, at, at+1)
	result.LeftOut = &cover.Cover{Spec: left, Distance: 3.2, Notice: sense.NoticeOf(3.2, false), Score: 71, ABVChange: 0.8, VolumeChange: -14}
	return a, nil
}

// Nearest is the first example, if it can be poured for the guest.
func (b Bar) Nearest(_ *flavor.Spec, stock []*flavor.Profile, g guest.Guest) (*instead.Offered, error) {
	near := b.Examples()[0]
	for _, p := range part.Bottles(&near) {
		if !slices.Contains(stock, p) || !g.Accepts(p) {
			return nil, nil
		}
	}
	return &instead.Offered{Spec: &near, Distance: 6, Notice: sense.NoticeOf(6, false)}, nil
}

func (Bar) Suggest(_ context.Context, prefix string, _ int) ([]*flavor.Profile, error) {
	if prefix == "broken" {
		return nil, ErrBroken
	}
	var out []*flavor.Profile
	for _, p := range []*flavor.Profile{Gin, Lemon, Syrup} {
		if strings.HasPrefix(flavor.NormaliseName(p.Name), flavor.NormaliseName(prefix)) {
			out = append(out, p)
		}
	}
	return out, nil
}

func (Bar) Examples() []flavor.Spec {
	return []flavor.Spec{{Name: "Halyard Sour", Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: Gin, Amount: 2, Unit: flavor.Ounce, ML: 59.1}, {Profile: Lemon, Amount: 0.75, Unit: flavor.Ounce, ML: 22.2},
		{Profile: Syrup, Amount: 0.5, Unit: flavor.Ounce, ML: 14.8}}}}
}

func (Bar) Family(id string) (template.Family, bool) {
	if id == "tiki" {
		return template.Family{ID: id, Name: "Tropical"}, true
	}
	return template.Family{ID: id, Name: "Sour", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour}, Ratio: []float64{8, 3, 3},
		Source: "2 : ¾ : ¾, common practice", Usual: "Too much syrup tastes flat; too much juice is sharp."}, id == "sour"
}

func (b Bar) Families() []template.Family {
	sour, _ := b.Family("sour")
	return []template.Family{sour, {ID: "tiki", Name: "Tropical"}, {ID: "flip", Name: "Flip"}}
}

func (Bar) Ranges(*flavor.Spec, string) ([ratio.NumAxes]draw.Range, bool) {
	return [ratio.NumAxes]draw.Range{ratio.Strong: {Has: true, Low: 48.2, Centre: 56.4, High: 64.1, PlusMinus: 1.6},
		ratio.Sweet: {Has: true, Low: 14.1, Centre: 19.8, High: 27.2, PlusMinus: 1.1}, ratio.Sour: {Has: true, Low: 15.6, Centre: 20.7, High: 32.4, PlusMinus: 0.8},
		ratio.Bitter: {High: 10.6, PlusMinus: 0.2}, ratio.Long: {High: 11.3}}, true
}

// Look pours every drink, amber, into a coupe.
func (Bar) Look(s *flavor.Spec) (*kitchen.Look, error) {
	coupe := mix.Glass{Name: "coupe", ML: 150}
	f, err := coupe.Fill(140, s.Service)
	return &kitchen.Look{Swatch: sense.Swatch{R: 222, G: 155, B: 60, Cloudy: 0.2}, Service: s.Service, Filling: f}, err
}

// Contrast tells a drink with another ingredient by its aroma, and finds it drier.
func (Bar) Contrast(before, after *flavor.Spec) (*kitchen.Contrast, error) {
	c := &kitchen.Contrast{}
	if slices.ContainsFunc(after.Pours, func(p flavor.Pour) bool { return indexOf(before.Pours, p.Profile) < 0 }) {
		c.Steps[sense.Sweet], c.Steps[sense.Volume] = -1.8, 0.5
		c.Notes = []sense.NoteChange{{Note: sense.Note{ID: "marzipan", Family: flavor.Nut}, Steps: -7}, {Note: sense.Note{ID: "clove", Family: flavor.Clove}, Steps: 2.2}}
		c.Colour = "straw turns amber"
	}
	return c, nil
}

func (Bar) Cautions(s *flavor.Spec) []behind.Caution {
	if indexOf(s.Pours, white) < 0 {
		return nil
	}
	return []behind.Caution{{Text: "Raw egg can carry Salmonella.", Source: "A food agency"}}
}

// indexOf returns the index of the first pour of an ingredient, -1 if there is none.
func indexOf(pours []flavor.Pour, p *flavor.Profile) int {
	return slices.IndexFunc(pours, func(x flavor.Pour) bool { return x.Profile.ID == p.ID })
}
