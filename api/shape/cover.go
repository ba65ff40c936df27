package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/api/wire"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/sense"
)

// CoverBody asks what to pour in place of an ingredient.
type CoverBody struct {
	Draft
	Missing    wire.OneOrMore[string] `json:"missing" doc:"What ran out: a name, alias or id, or a list of them"`
	Avoid      []string               `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have, or caffeine, coconut, grapefruit, liquorice, quinine; what may contain one counts as containing it"`
	Diet       []string               `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV     float64                `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of the finished drink, in % vol; leave it out for any strength"`
	Prices     map[string]float64     `json:"prices_per_ml,omitempty" doc:"What a millilitre costs, by ingredient id, in any currency"`
	MaxCost    float64                `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of the substitutes of one drink, in the currency of the prices; ingredients without a price are then left out"`
	Stock      []string               `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; leave it out for the whole catalogue, where what few bars stock comes after what most bars stock"`
	Everywhere bool                   `json:"everywhere,omitempty" doc:"List what ranks far behind the best too and, without a stock, treat rare bottles like common ones"`
	MaxParts   int                    `json:"max_parts,omitempty" minimum:"1" maximum:"3" default:"2" doc:"Most ingredients that one cover may be made of; with 2, three that the trade pours together where nothing of fewer keeps the drink"`
	Limit      int                    `json:"limit,omitempty" minimum:"1" maximum:"100" default:"10" doc:"Most covers to list"`
}

// CoverAnswer is the covers found.
type CoverAnswer struct {
	Missing       wire.OneOrMore[Ingredient] `json:"missing" doc:"As it was asked: one ingredient, or a list"`
	Removed       []Ingredient               `json:"removed" doc:"Everything that was taken out: what is missing, and what carries an allergen to avoid"`
	Unstated      []Ingredient               `json:"unstated,omitempty" doc:"Ingredients of removed that a label may clear for the guest: they may carry what the guest avoids, or nobody has stated it"`
	UnstatedFor   []string                   `json:"unstated_for,omitempty" doc:"What each of those labels must say, in the same order, such as: names no sulphites"`
	Covers        []Cover                    `json:"covers" doc:"The best first"`
	IfLabelClears []Cover                    `json:"if_label_clears" doc:"Not safe as they stand: covers with an ingredient that may carry what the guest avoids, or of which nobody has stated it; pour one only if the labels in read clear it for the guest"`
	LabelsLead    bool                       `json:"labels_lead,omitempty" doc:"What is in if_label_clears is to be poured first, once its labels are read: nothing in covers keeps the drink, or all of it does without more than ran out"`
	LabelFirst    bool                       `json:"label_first,omitempty" doc:"The first of if_label_clears would stand before every cover: read its labels first"`
	LeftOut       *Cover                     `json:"left_out,omitempty" doc:"The drink without what is missing and with nothing in its place, if that keeps the drink"`
	LeftOutBest   bool                       `json:"left_out_best,omitempty" doc:"Leaving it out does better than every cover"`
	Instead       *Instead                   `json:"instead,omitempty" doc:"What to offer, if no cover keeps the drink"`
	Barred        []Barred                   `json:"barred,omitempty" doc:"What a bar would pour in place of what is missing and why it does not now, where nothing that is known to be safe keeps the drink"`
	Near          bool                       `json:"near" doc:"False if nothing keeps the drink, neither a cover nor leaving out what is missing"`
	ProvenBest    bool                       `json:"proven_best" doc:"False if time ran out, so that a better cover may be missing"`
	Unbalanced    bool                       `json:"unbalanced" doc:"True if no cover keeps the drink in balance, not even those listed"`
	Refused       Refused                    `json:"refused" doc:"How many ingredients could not be considered, and why"`
	Notes         []string                   `json:"notes,omitempty" doc:"How the draft was read, where it leaves something open"`
	CrossContact  string                     `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// Instead is what to offer a guest where no cover keeps the drink.
type Instead struct {
	Menu *Offered `json:"menu,omitempty" doc:"The nearest drink of the menu that can be poured"`
	Riff *Offered `json:"riff,omitempty" doc:"A drink made of what is there that comes near"`
}

// Barred is what a bar would pour in place of something, and what keeps it from doing so.
type Barred struct {
	Out    string   `json:"out" doc:"Name of what it would stand for"`
	Ways   []string `json:"ways" doc:"Names of what would be poured, each by itself"`
	Reason string   `json:"reason" enum:"label,ask,stock,guest,drink" doc:"A label may clear it; the guest must be asked; it is not at hand; the guest must not have it; the drink does not stay what it is"`
	Why    string   `json:"why" doc:"Goes on from the names"`
	Text   string   `json:"text"`
}

// Offered is a drink offered in place of another.
type Offered struct {
	Name        string  `json:"name"`
	Spec        Spec    `json:"spec" doc:"As a spec that can be sent back"`
	DistanceJND float64 `json:"distance_jnd" doc:"From the drink that was asked for, in noticeable steps"`
	Notice      string  `json:"notice" enum:"won't,may,will" doc:"Whether a guest will notice"`
}

// Ingredient names an ingredient.
type Ingredient struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// Cover is one way to pour a drink without what is missing.
type Cover struct {
	Parts          []CoverPart `json:"parts" doc:"What is poured instead, the most first"`
	Changes        []Change    `json:"changes" doc:"Other pours whose amounts change"`
	Spec           Spec        `json:"spec" doc:"The whole drink, as a spec that can be sent back"`
	Without        []string    `json:"without,omitempty" doc:"Ids of what had to go and nothing stands for: the drink is poured without it"`
	DistanceJND    float64     `json:"distance_jnd" doc:"How far the finished drink moves, in noticeable steps"`
	BesideJND      float64     `json:"beside_alcohol_jnd,omitempty" doc:"The same distance without the alcohol that the guest must not have; left out where that does not apply"`
	Notice         string      `json:"notice" enum:"won't,may,will" doc:"Whether a guest will notice"`
	Gone           []string    `json:"gone" doc:"Leading aroma materials of what is missing that are no longer in the glass"`
	Score          float64     `json:"score"`
	ScoreBefore    float64     `json:"score_before"`
	Lost           []string    `json:"lost" doc:"Aroma families that a guest would miss"`
	Gained         []string    `json:"gained" doc:"Aroma families that a guest would notice"`
	ABVPct         float64     `json:"abv_pct" doc:"Finished, in % vol"`
	ABVChangePct   float64     `json:"abv_change_pct" doc:"Finished, in % vol"`
	VolumeChangeML float64     `json:"volume_change_ml" doc:"Finished"`
	Allergens      []Allergen  `json:"allergens"`
	NewAllergens   []string    `json:"new_allergens" doc:"Those that the drink did not have before"`
	Cautions       []Caution   `json:"cautions" doc:"Cautions of its pours, without the general ones on alcohol"`
	Read           []string    `json:"read,omitempty" doc:"Ids whose labels must clear the drink for the guest"`
	ReadFor        []string    `json:"read_for,omitempty" doc:"What each of those labels must say, in the same order, such as: names no sulphites"`
	Ask            []string    `json:"ask,omitempty" doc:"What to ask the guest before you pour: what the law does not count as an avoided allergen, but some guests avoid"`
	Also           []string    `json:"also,omitempty" doc:"Other covers that give the same glass, one line each"`
	Custom         bool        `json:"custom" doc:"The trade or the house pours this in place of what is missing, so it may stand above a cover that is a little nearer"`
	Ahead          string      `json:"ahead,omitempty" enum:"custom,bottles,balance,kind" doc:"Why it stands above a nearer cover: the trade or the house pours it, it takes fewer bottles, it is better balanced, or it is closer in kind to what is missing; left out where it stands above none"`
	Keeps          bool        `json:"keeps" doc:"It keeps the drink: it lies within 4 noticeable steps, within 5 where it is what every bar pours, or within 9 where it is a custom and no leading aroma is lost"`
	Text           string      `json:"text"`
}

// CoverPart is one substitute and its amount.
type CoverPart struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	ML     float64 `json:"ml"`
	For    string  `json:"for" doc:"Id of what it replaces"`
	OnTop  bool    `json:"on_top,omitempty" doc:"It sparkles, and goes on top once the rest is mixed"`
}

// Refused counts the ingredients that would have done, by the reason that ruled them out.
type Refused struct {
	ByAllergen int `json:"by_allergen"`
	NotInStock int `json:"not_in_stock"`
}

// AnswerCover finds covers. Its faults name the line of a text or the place in
// the fields.
func AnswerCover(ctx context.Context, house *service.Snapshot, body CoverBody) (*CoverAnswer, error) {
	r, err := house.Cover(ctx, service.CoverRequest{Draft: body.Draft.ToCentre(), Missing: body.Missing.Items,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV, MaxCost: body.MaxCost, Prices: body.Prices},
		Stock: body.Stock, Everywhere: body.Everywhere, Parts: body.MaxParts, Limit: body.Limit})
	if err != nil {
		return nil, err
	}
	shown := func(c cover.Cover) Cover { return coverOf(house, &c, r.Result.ScoreBefore) }
	answer := &CoverAnswer{
		CrossContact:  crossContact(body.Avoid, body.Diet),
		Missing:       wire.OneOrMore[Ingredient]{Items: figure.List(r.Missing, IngredientOf), IsList: body.Missing.IsList},
		Removed:       figure.List(r.Result.Removed, IngredientOf),
		Unstated:      figure.List(r.Result.Unstated, IngredientOf),
		UnstatedFor:   r.Result.UnstatedFor,
		Covers:        figure.List(r.Result.Covers, shown),
		IfLabelClears: figure.List(r.Result.IfLabelClears, shown),
		LabelFirst:    r.Result.LabelFirst,
		LabelsLead:    r.Result.LabelsLead,
		Near:          r.Result.Near,
		ProvenBest:    r.Result.Proven,
		Unbalanced:    r.Result.Unbalanced,
		Refused:       Refused{ByAllergen: r.Refused.ByAllergen, NotInStock: r.Refused.NotInStock},
		Instead:       insteadOf(r.Instead),
		Barred:        figure.List(barred.Lines(r.Barred), barredOf),
		Notes:         r.Notes,
	}
	if c := r.Result.LeftOut; c != nil {
		out := shown(*c)
		answer.LeftOut, answer.LeftOutBest = &out, r.Result.LeftOutBest
	}
	return answer, nil
}

func insteadOf(x *service.Instead) *Instead {
	if x == nil || x.Menu == nil && x.Riff == nil {
		return nil
	}
	out := &Instead{}
	if m := x.Menu; m != nil {
		out.Menu = &Offered{m.Spec.Name, SpecOf(m.Spec), figure.Round(m.Distance, figure.JND), string(m.Notice)}
	}
	if r := x.Riff; r != nil {
		out.Riff = &Offered{r.Name, SpecOf(&r.Spec), figure.Round(r.Distance, figure.JND), string(r.Notice)}
	}
	return out
}

func barredOf(l barred.Line) Barred {
	return Barred{l.Out, l.Ways, string(l.Reason), l.Why, l.String()}
}

// IngredientOf names an ingredient.
func IngredientOf(p *flavor.Profile) Ingredient { return Ingredient{p.ID, p.Name} }

// partsOf lists what is poured instead, and what each part stands for.
func partsOf(c *cover.Cover) []CoverPart {
	out := make([]CoverPart, len(c.Parts))
	for i, p := range c.Parts {
		out[i] = CoverPart{p.Profile.ID, p.Profile.Name, p.Amount, string(p.Unit), figure.Round(p.ML, figure.ML), c.For[i].ID, c.OnTop(&p)}
	}
	return out
}

func coverOf(house *service.Snapshot, c *cover.Cover, before float64) Cover {
	return Cover{
		Parts:          partsOf(c),
		Changes:        figure.List(c.Changes, changeOf),
		Spec:           SpecOf(&c.Spec),
		DistanceJND:    figure.Round(c.Distance, figure.JND),
		BesideJND:      figure.Round(c.Beside, figure.JND),
		Notice:         string(c.Notice),
		Gone:           figure.List(c.Gone, func(l sense.Lost) string { return l.Material }),
		Read:           figure.List(c.Read, func(p *flavor.Profile) string { return p.ID }),
		ReadFor:        c.ReadFor,
		Ask:            c.Ask,
		Also:           figure.List(c.Also, func(o cover.Cover) string { return o.Text }),
		Score:          figure.RoundDown(c.Score),
		ScoreBefore:    figure.RoundDown(before),
		Lost:           figure.List(c.Lost, flavor.AromaFamily.String),
		Gained:         figure.List(c.Gained, flavor.AromaFamily.String),
		ABVPct:         figure.Round(c.ABV, figure.Pct),
		ABVChangePct:   figure.Round(c.ABVChange, figure.Pct),
		VolumeChangeML: figure.Round(c.VolumeChange, figure.ML),
		Allergens:      AllergensOf(&c.Spec),
		NewAllergens:   figure.List(c.NewAllergens, func(a flavor.Allergen) string { return string(a) }),
		Cautions:       CautionsOf(house.CautionsOf(&c.Spec)),
		Custom:         c.Custom,
		Ahead:          string(c.Ahead),
		Keeps:          c.Keeps,
		Without:        figure.List(c.Without, func(p *flavor.Profile) string { return p.ID }),
		Text:           c.Text,
	}
}
