package shape

import (
	"context"
	"math"
	"reflect"
	"strings"

	"counterpour/api/problem"
	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// ScoreBody asks for a draft to be scored.
type ScoreBody struct {
	Draft
	Explain bool `json:"explain,omitempty" doc:"Also give the arithmetic of the score, line by line"`
	Partial bool `json:"partial,omitempty" doc:"Of a text, score the lines that can be read while others cannot, and list those as incomplete; without it they are errors"`
}

// ScoreAnswer is a scored draft.
type ScoreAnswer struct {
	Spec        ReadSpec               `json:"spec" doc:"The draft as it was read"`
	Finished    Finished               `json:"finished" doc:"What is in the glass"`
	Template    TemplateFit            `json:"template" doc:"The family the drink belongs to most surely"`
	Templates   []TemplateChance       `json:"templates" doc:"Families by probability; below 0.005 they are left out, except the first three"`
	Equivalents Equivalents            `json:"equivalents" doc:"The pours restated in the trade's own measures"`
	Score       float64                `json:"score" minimum:"0" maximum:"100" doc:"0 to 100, higher is better, rounded down"`
	Verdict     string                 `json:"verdict" enum:"balanced,near,off" doc:"balanced from 70, near from 50, else off"`
	Faults      []Fault                `json:"faults" doc:"What is off, the worst first; empty if the drink is balanced"`
	Fixes       []Fix                  `json:"fixes" doc:"How to fix it, the best first"`
	Allergens   []Allergen             `json:"allergens"`
	Cautions    []Caution              `json:"cautions"`
	Incomplete  []problem.ProblemError `json:"incomplete,omitempty" doc:"The lines that could not be read, where a part was asked for: the rest is scored without them, and no fixes are given"`
	Explanation []Step                 `json:"explanation,omitempty" doc:"The arithmetic of the score, if it was asked for"`
}

// Step is one line of the calculation of a score.
type Step struct {
	Stage  string  `json:"stage" doc:"pour, total, share, centre, ratio, excess, distance, family, probability, other, mean, habit, bound or score"`
	Family string  `json:"family" doc:"Id of the family that the line is about; empty for the whole drink"`
	Text   string  `json:"text"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
}

// ReadSpec is a draft as it was read.
type ReadSpec struct {
	Name    string     `json:"name"`
	Method  string     `json:"method"`
	Service string     `json:"service"`
	Pours   []ReadPour `json:"pours"`
	Notes   []string   `json:"notes" doc:"What was assumed in reading it"`
	Said
}

// ReadPour is a pour as it was read.
type ReadPour struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	ML     float64 `json:"ml"`
	After  bool    `json:"after,omitempty" doc:"Goes in once the rest is mixed"`
	Match  Match   `json:"match"`
}

// Match is how a written name was matched to an ingredient.
type Match struct {
	Asked string `json:"asked" doc:"The name as written"`
	How   string `json:"how" enum:"exact,alias,fuzzy"`
	// Inferred names what the draft left out and the reader worked out. The notes state
	// each.
	Inferred []string `json:"inferred,omitempty" doc:"amount, unit or name: what was not written, but worked out"`
}

// Equivalents is a drink in millilitres of 40 % spirit, syrup of equal weights,
// lemon juice, red bitter aperitif and length, before ice.
type Equivalents struct {
	Strong float64 `json:"strong" doc:"mL of spirit at 40 % vol"`
	Sweet  float64 `json:"sweet" doc:"mL of syrup of equal weights of sugar and water"`
	Sour   float64 `json:"sour" doc:"mL of fresh lemon juice"`
	Bitter float64 `json:"bitter" doc:"mL of red bitter aperitif"`
	Long   float64 `json:"long" doc:"mL of length"`
}

// TemplateFit is how well a drink fits a family.
type TemplateFit struct {
	ID   string  `json:"id"`
	Name string  `json:"name"`
	Fit  float64 `json:"fit" minimum:"0" maximum:"100" doc:"Per cent of the family's good drinks that are as far from its centre or further"`
}

// TemplateChance is a family and the probability that a drink belongs to it.
type TemplateChance struct {
	ID          string  `json:"id"`
	Name        string  `json:"name"`
	Fit         float64 `json:"fit" minimum:"0" maximum:"100"`
	Probability float64 `json:"probability" minimum:"0" maximum:"1"`
}

// Fault is an axis on which a drink departs from its family.
type Fault struct {
	Axis      string  `json:"axis" enum:"strong,sweet,sour,bitter,long,salty,umami,pungent,aroma,fat,foam,volume,temperature,method"`
	Pour      string  `json:"pour,omitempty" doc:"id of the ingredient that causes it, if one does"`
	Direction string  `json:"direction" enum:"high,low"`
	Word      string  `json:"word" doc:"The fault in a word or two: too sweet, curdles"`
	Deviation float64 `json:"deviation" doc:"How far it is off, in noticeable steps, 99.9 at most"`
	PlusMinus float64 `json:"plus_minus_jnd" doc:"The drink's own spread on the axis, in noticeable steps"`
	Text      string  `json:"text"`
}

// Fix is a change that improves a draft.
type Fix struct {
	Changes []Change `json:"changes"`
	Score   float64  `json:"score" doc:"The score it would have"`
	Spec    Spec     `json:"spec" doc:"The whole drink with the change made"`
	Text    string   `json:"text"`
}

// Change is one pour moved, added or left out.
type Change struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	FromML float64 `json:"from_ml"`
	ToML   float64 `json:"to_ml"`
	From   string  `json:"from" doc:"The amount as a bartender writes it; empty for a pour that was not there"`
	To     string  `json:"to"`
}

// Limits on the families that an answer lists.
const (
	leastProbability = 0.005
	leastFamilies    = 3
)

// mostDeviation is served for a deviation that is larger or infinite, such as bitterness
// in a family that has none.
const mostDeviation = 99.9

// AnswerScore reads and scores a draft. Its faults name the line of a text or
// the place in the fields.
func AnswerScore(ctx context.Context, house *service.Snapshot, body ScoreBody) (*ScoreAnswer, error) {
	r, err := house.Score(ctx, service.ScoreRequest{Draft: body.Draft.ToCentre(), Explain: body.Explain, Partial: body.Partial})
	if err != nil {
		return nil, err
	}
	a := &ScoreAnswer{
		Spec:        readSpec(&r.Spec),
		Finished:    finished(r.Result.Drink),
		Templates:   chances(r.Result.Judgement.Fits),
		Equivalents: equivalents(r.Result.Judgement.Equivalents),
		Score:       figure.RoundDown(r.Result.Judgement.Score),
		Verdict:     string(r.Result.Verdict),
		Faults:      figure.List(r.Result.Faults, faultOf),
		Fixes:       figure.List(r.Fixes, fixOf),
		Allergens:   AllergensOf(&r.Spec),
		Cautions:    CautionsOf(r.Cautions),
	}
	for _, f := range r.Incomplete {
		a.Incomplete = append(a.Incomplete, problem.ErrorOf(f, ""))
	}
	a.Finished.Glass = r.Glass
	a.Finished.sensed(r.Sensed)
	if len(a.Templates) > 0 {
		best := a.Templates[0]
		a.Template = TemplateFit{best.ID, best.Name, best.Fit}
	}
	if body.Explain {
		a.Explanation = figure.List(r.Steps, func(s arithmetic.Step) Step {
			return Step{string(s.Stage), s.Family, s.Text, figure.Round(s.Value, figure.Step), s.Unit}
		})
	}
	return a, nil
}

func readSpec(s *flavor.Spec) ReadSpec {
	return ReadSpec{Name: s.Name, Method: string(s.Method), Service: string(s.Service),
		Notes: append([]string{}, s.Notes...), Said: saidOf(s),
		Pours: figure.List(s.Pours, func(p flavor.Pour) ReadPour {
			return ReadPour{ID: p.Profile.ID, Name: p.Profile.Name, Amount: p.Amount, Unit: string(p.Unit),
				ML: figure.Round(p.ML, figure.ML), After: p.After,
				Match: Match{p.Match.Asked, string(p.Match.How), p.Match.Inferred}}
		})}
}

// chances lists the families of a drink in the order of fits, the most probable first.
func chances(fits []weigh.Fit) []TemplateChance {
	n := 0
	for n < len(fits) && (n < leastFamilies || fits[n].Probability >= leastProbability) {
		n++
	}
	return figure.List(fits[:n], func(f weigh.Fit) TemplateChance {
		return TemplateChance{f.ID, f.Name, figure.Round(100*f.Tail(), figure.Fit), figure.Round(f.Probability, figure.Probability)}
	})
}

func equivalents(e ratio.Equivalents) Equivalents {
	at := func(a ratio.Axis) float64 { return figure.Round(e[a], figure.ML) }
	return Equivalents{at(ratio.Strong), at(ratio.Sweet), at(ratio.Sour), at(ratio.Bitter), at(ratio.Long)}
}

func faultOf(f balance.Fault) Fault {
	direction := "low"
	if f.High {
		direction = "high"
	}
	pour := ""
	if f.Profile != nil {
		pour = f.Profile.ID
	}
	return Fault{Axis: f.Axis.String(), Pour: pour, Direction: direction, Word: f.Word(), Text: f.Text,
		Deviation: figure.Round(math.Min(f.Deviation, mostDeviation), figure.Deviation),
		PlusMinus: figure.Round(math.Min(f.PlusMinus, mostDeviation), figure.Deviation)}
}

func fixOf(f balance.Fix) Fix {
	return Fix{Changes: figure.List(f.Changes, changeOf), Score: figure.RoundDown(f.Score), Spec: SpecOf(&f.Spec), Text: f.Text}
}

func changeOf(c balance.Change) Change {
	out := Change{ID: c.Profile.ID, Name: c.Profile.Name, From: c.Before(), FromML: figure.Round(c.FromML, figure.ML), ToML: figure.Round(c.ToML, figure.ML)}
	if c.ToML > 0 {
		out.To = measure.FormatAmount(c.To, c.Unit)
	}
	return out
}

// Finished is what is in the glass. Volumes and densities are at 20 °C.
type Finished struct {
	VolumeML     float64            `json:"volume_ml"`
	ABVPct       float64            `json:"abv_pct" doc:"% vol"`
	SugarPer100  float64            `json:"sugar_g_per_100ml"`
	AcidPer100   float64            `json:"acid_g_per_100ml" doc:"As citric acid with as much acid hydrogen"`
	Bitter       float64            `json:"bitter" doc:"mg/L of quinine that taste as bitter"`
	DilutionPct  float64            `json:"dilution_pct" doc:"Water from the ice, as a share of the volume that met the ice"`
	EthanolG     float64            `json:"ethanol_g"`
	EnergyKcal   float64            `json:"energy_kcal"`
	TemperatureC float64            `json:"temperature_c" doc:"As it is served"`
	Servings     []Serving          `json:"servings" doc:"The alcohol in the standard drinks of each country"`
	Glass        string             `json:"glass" doc:"How far it fills the usual glasses"`
	PlusMinus    PlusMinus          `json:"plus_minus" doc:"One standard deviation"`
	Aroma        map[string]float64 `json:"aroma" doc:"Intensity of each family of 0.01 or more; 10 is the leading note of a full-flavoured bottle"`
	Colour       Colour             `json:"colour" doc:"As it looks against white, three centimetres deep"`
	SaltGPerL    float64            `json:"salt_g_per_l"`
	UmamiGPerL   float64            `json:"umami_g_per_l" doc:"Monosodium glutamate that tastes as savoury"`
	Pungent      float64            `json:"pungent_mg_per_l" doc:"Capsaicin that bites as much"`
	Cooling      float64            `json:"cooling_mg_per_l" doc:"Menthol that cools as much"`
	Astringent   float64            `json:"astringent_g_per_l" doc:"Tannic acid that dries the mouth as much"`
	Carbonation  float64            `json:"carbonation_g_per_l" doc:"Carbon dioxide, if none is lost in mixing"`
	BodyGPerL    float64            `json:"body_g_per_l" doc:"What thickens beyond sugar: fat, protein, gum, pulp"`
	FatGPerL     float64            `json:"fat_g_per_l"`
	FoamGPerL    float64            `json:"foam_g_per_l" doc:"Egg-white protein that holds as much foam"`
}

// Colour is the colour and cloudiness of a drink.
type Colour struct {
	RGB    string  `json:"rgb" pattern:"^#[0-9a-f]{6}$" doc:"Such as #f4d9a6"`
	Cloudy float64 `json:"cloudy" minimum:"0" maximum:"1" doc:"0 clear, 1 opaque"`
	Words  string  `json:"words" doc:"Such as cloudy straw"`
}

func lookOf(s sense.Swatch) Colour {
	return Colour{s.Hex(), figure.Round(s.Cloudy, figure.Cloudy), s.Words()}
}

// Serving is the alcohol of a drink in standard drinks of one country.
type Serving struct {
	Country string  `json:"country"`
	Grams   float64 `json:"grams" doc:"Ethanol in one of them"`
	Count   float64 `json:"count"`
}

// PlusMinus is one standard deviation of each number of a finished drink.
type PlusMinus struct {
	ABVPct      float64 `json:"abv_pct"`
	SugarPer100 float64 `json:"sugar_g_per_100ml"`
	AcidPer100  float64 `json:"acid_g_per_100ml"`
	VolumeML    float64 `json:"volume_ml"`
	DilutionPct float64 `json:"dilution_pct"`
	EnergyKcal  float64 `json:"energy_kcal" doc:"Without that of fat and protein"`
	TempC       float64 `json:"temperature_c" doc:"Before the freezing point stops it"`
}

func finished(d *mix.Drink) Finished {
	return Finished{
		VolumeML:     figure.Round(d.VolumeML, figure.ML),
		ABVPct:       figure.Round(d.ABV, figure.Pct),
		SugarPer100:  figure.Round(d.SugarPer100, figure.Per100),
		AcidPer100:   figure.Round(d.AcidPer100, figure.AcidPer100),
		Bitter:       figure.Round(d.Bitter, figure.Bitter),
		DilutionPct:  figure.Round(d.DilutionPct, figure.Pct),
		EthanolG:     figure.Round(d.After.Ethanol, figure.Grams),
		EnergyKcal:   figure.Round(d.EnergyKcal, figure.Kcal),
		TemperatureC: figure.Round(d.TemperatureC, figure.Celsius),
		PlusMinus: PlusMinus{
			ABVPct:      figure.Round(d.PlusMinus.ABV, figure.Pct),
			SugarPer100: figure.Round(d.PlusMinus.SugarPer100, figure.Per100),
			AcidPer100:  figure.Round(d.PlusMinus.AcidPer100, figure.AcidPer100),
			VolumeML:    figure.Round(d.PlusMinus.VolumeML, figure.ML),
			DilutionPct: figure.Round(d.PlusMinus.DilutionPct, figure.Pct),
			EnergyKcal:  figure.Round(d.PlusMinus.EnergyKcal, figure.Kcal),
			TempC:       figure.Round(d.PlusMinus.TemperatureC, figure.Celsius),
		},
		Servings: ServingsOf(d.After.Ethanol),
		Aroma:    aromaOf(d.Aroma),
	}
}

// sensed fills in what [sense.Percept] adds: aroma, colour, and the senses beside sweet,
// sour and bitter.
func (f *Finished) sensed(g *sense.Percept) {
	f.Colour = lookOf(g.Swatch())
	for _, x := range []struct {
		into *float64
		of   sense.Sense
	}{
		{&f.SaltGPerL, sense.Salty}, {&f.UmamiGPerL, sense.Umami}, {&f.Pungent, sense.Pungent}, {&f.Cooling, sense.Cooling},
		{&f.Astringent, sense.Astringent}, {&f.Carbonation, sense.Carbonation}, {&f.BodyGPerL, sense.Body},
		{&f.FatGPerL, sense.Fat}, {&f.FoamGPerL, sense.Foam},
	} {
		*x.into = figure.Round(g.Holds[x.of], figure.Sense)
	}
}

// Read returns the field whose JSON name is the key of a [mix.Readout], and its standard
// deviation, 0 if none is known. ok is false if this answer has no such field.
func (f *Finished) Read(key string) (value, spread float64, ok bool) {
	if value, ok = numberAt(reflect.ValueOf(f).Elem(), key); ok {
		spread, _ = numberAt(reflect.ValueOf(&f.PlusMinus).Elem(), key)
	}
	return value, spread, ok
}

// numberAt returns the field of a struct that has this name in JSON.
func numberAt(v reflect.Value, key string) (float64, bool) {
	for i := range v.NumField() {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		if name == key && v.Field(i).Kind() == reflect.Float64 {
			return v.Field(i).Float(), true
		}
	}
	return 0, false
}

// leastAroma is the intensity below which a family of aromas is left out, since nobody
// smells it.
const leastAroma = 0.01

func aromaOf(a flavor.Aroma) map[string]float64 {
	out := map[string]float64{}
	for f, v := range a {
		if v >= leastAroma {
			out[flavor.AromaFamily(f).String()] = figure.Round(v, figure.Aroma)
		}
	}
	return out
}
