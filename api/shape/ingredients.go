package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// SearchAnswer is the result of a search for ingredients.
type SearchAnswer struct {
	Hits    []Hit        `json:"hits" doc:"The best first"`
	Total   int          `json:"total" doc:"How many match in all"`
	Classes []ClassCount `json:"classes" doc:"The classes of all that match, most first"`
}

// Hit is one ingredient of a search result.
type Hit struct {
	ID      string   `json:"id"`
	Name    string   `json:"name"`
	Aliases []string `json:"aliases"`
	Class   string   `json:"class"`
	Score   float64  `json:"score" minimum:"0" maximum:"1" doc:"1 for the best hit in words; with like, 1 / (1 + distance)"`
}

// ClassCount counts the ingredients of a class.
type ClassCount struct {
	Class string `json:"class"`
	Count int    `json:"count"`
}

// AnswerSearch finds ingredients.
func AnswerSearch(ctx context.Context, in *kitchen.Ingredients, r kitchen.FindRequest) (*SearchAnswer, error) {
	found, err := in.Find(ctx, r)
	if err != nil {
		return nil, err
	}
	return &SearchAnswer{
		Hits: figure.List(found.Hits, func(h lookup.Hit) Hit {
			return Hit{h.Profile.ID, h.Profile.Name, append([]string{}, h.Profile.Aliases...), string(h.Profile.Class), figure.Round(h.Score, figure.Search)}
		}),
		Total:   found.Total,
		Classes: figure.List(found.Classes, func(f lookup.Facet) ClassCount { return ClassCount{f.Name, f.Count} }),
	}, nil
}

// IngredientAnswer is the profile of one ingredient.
type IngredientAnswer struct {
	ID              string             `json:"id"`
	Name            string             `json:"name"`
	Aliases         []string           `json:"aliases"`
	Class           string             `json:"class"`
	Legal           string             `json:"legal" doc:"The legal definition that the profile is held to; empty if none is claimed"`
	ABVPct          float64            `json:"abv_pct" doc:"% vol at 20 °C"`
	SugarGPerL      float64            `json:"sugar_g_per_l" doc:"All sugars, as weighed"`
	SweetGPerL      float64            `json:"sweet_g_per_l" doc:"Sucrose that tastes as sweet"`
	AcidGPerL       float64            `json:"acid_g_per_l" doc:"All acids, as weighed"`
	SourGPerL       float64            `json:"sour_g_per_l" doc:"Citric acid with as much acid hydrogen"`
	Bitter          float64            `json:"bitter" doc:"mg/L of quinine that taste as bitter"`
	SaltGPerL       float64            `json:"salt_g_per_l" doc:"Sodium chloride; 0 as well where nobody has stated it, see stated"`
	WaterGPerL      float64            `json:"water_g_per_l"`
	CaffeineMGPerL  float64            `json:"caffeine_mg_per_l" doc:"0 as well where nobody has stated it, see stated"`
	TanninGPerL     float64            `json:"tannin_g_per_l" doc:"0 as well where nobody has stated it, see stated"`
	SweetenersGPerL float64            `json:"sweeteners_g_per_l" doc:"Sucrose that tastes as sweet as what sweetens beside the sugars"`
	FatGPerL        float64            `json:"fat_g_per_l"`
	TextureGPerL    float64            `json:"texture_g_per_l" doc:"What thickens beyond sugar: fat, protein, gum, pulp"`
	DensityGPerML   float64            `json:"density_g_per_ml" doc:"At 20 °C"`
	Sugars          string             `json:"sugars" doc:"Which blend of sugars"`
	Acids           string             `json:"acids" doc:"Which blend of acids"`
	Carbonated      bool               `json:"carbonated"`
	Aroma           map[string]float64 `json:"aroma" doc:"Intensity of each family of 0.01 or more; 10 is the leading note of a full-flavoured bottle"`
	Materials       []MaterialShare    `json:"materials" doc:"What the aroma is worked out from"`
	Leads           []Lead             `json:"leads" doc:"What it is known by: the materials with at least a fifth of its aroma, the first one first"`
	Colour          Colour             `json:"colour" doc:"As it looks against white, three centimetres deep"`
	Units           []UnitYield        `json:"units" doc:"The units it is poured in, and what one of each gives"`
	Making          string             `json:"making" doc:"How to make it, for house-made things"`
	Animal          []string           `json:"animal" doc:"What in it comes from animals"`
	AllergensKnown  bool               `json:"allergens_known" doc:"False if nobody has stated the allergens; every one then counts as possible"`
	Allergens       []Allergen         `json:"allergens"`
	Cautions        []Caution          `json:"cautions"`
	FreeOf          []string           `json:"free_of" doc:"Allergens known to be absent where the rest is unstated"`
	Stated          map[string]Stated  `json:"stated" doc:"The figures that the record states, by field; a figure that is not here is unknown"`
	Provenance      map[string]Origin  `json:"provenance" doc:"Spread, origin and source of each number, by its field"`
}

// MaterialShare is one material of an ingredient.
type MaterialShare struct {
	Material  string  `json:"material"`
	Intensity float64 `json:"intensity"`
}

// Lead is a material that characterises the smell of an ingredient.
type Lead struct {
	Material string    `json:"material"`
	Share    float64   `json:"share" minimum:"0" maximum:"1" doc:"Of the aroma"`
	Odorants []Odorant `json:"odorants" doc:"What the material is known by, the most telling first: by importance times rarity"`
}

// Odorant is a molecule that characterises the smell of a material.
type Odorant struct {
	Name       string   `json:"name"`
	Importance float64  `json:"importance" minimum:"0" maximum:"1" doc:"For the smell of the material"`
	Threshold  *float64 `json:"threshold_ug_per_l,omitempty" doc:"Odour threshold in water, in µg/L, where it is known"`
}

// UnitYield is a unit and the millilitres of the ingredient that it gives.
type UnitYield struct {
	Unit string  `json:"unit"`
	ML   float64 `json:"ml"`
}

// Stated is a figure of an ingredient's record, with its spread and origin.
type Stated struct {
	Value float64 `json:"value" doc:"In the unit that the name of the field says"`
	Origin
}

// Origin says where a figure comes from and how far it can be trusted.
type Origin struct {
	Spread float64 `json:"spread" doc:"One standard deviation, in the unit of the number; of the aroma, relative"`
	Origin string  `json:"origin" enum:"published,law,computed,common practice,computed from memory,from memory"`
	Source string  `json:"source"`
}

// AnswerIngredient returns the profile with an id. An unknown id is a fault of kind
// [fault.ErrNotFound] that suggests the nearest names.
func AnswerIngredient(house *service.Snapshot, id string) (*IngredientAnswer, error) {
	p, err := house.Ingredient(id)
	if err != nil {
		return nil, err
	}
	sour, sweet := p.Acid.Value*mix.CitricOf(p.Acids), mix.SweetOf(p)
	alone := flavor.Spec{Pours: []flavor.Pour{{Profile: p}}}
	return &IngredientAnswer{
		ID: p.ID, Name: p.Name, Aliases: append([]string{}, p.Aliases...), Class: string(p.Class), Legal: p.Legal,
		ABVPct:     figure.Round(p.ABV.Value, figure.Pct),
		SugarGPerL: figure.Round(p.Sugar.Value, figure.GPerL), SweetGPerL: figure.Round(sweet, figure.GPerL),
		AcidGPerL: figure.Round(p.Acid.Value, figure.GPerL), SourGPerL: figure.Round(sour, figure.GPerL),
		Bitter:    figure.Round(p.Bitter.Value, figure.Bitter),
		SaltGPerL: figure.Round(p.Salt.Value, figure.GPerL), FatGPerL: figure.Round(p.Fat.Value, figure.GPerL),
		WaterGPerL: figure.Round(1000*p.WaterGPerML, figure.GPerL), CaffeineMGPerL: figure.Round(p.Caffeine.Value, figure.GPerL),
		TanninGPerL:     figure.Round(p.Tannin.Value, figure.Density),
		SweetenersGPerL: figure.Round(p.Sweeteners.Value, figure.GPerL),
		TextureGPerL:    figure.Round(p.Texture.Value, figure.GPerL),
		DensityGPerML:   figure.Round(p.DensityGPerML, figure.Density),
		Sugars:          p.Sugars.Name, Acids: p.Acids.Name, Carbonated: p.Carbonated,
		Aroma:     aromaOf(p.Aroma),
		Materials: figure.List(p.Materials, func(m flavor.MaterialShare) MaterialShare { return MaterialShare(m) }),
		Leads:     leadsOf(house.Catalogue.Space(), p), Colour: colourOf(house.Catalogue.Space(), p),
		Units: unitsOf(p), Making: p.Making, Animal: append([]string{}, p.Animal...),
		AllergensKnown: p.AllergensKnown,
		Allergens:      AllergensOf(&alone), Cautions: CautionsOf(house.Cautions(p.Cautions)),
		FreeOf: figure.List(p.FreeOf, func(a flavor.Allergen) string { return string(a) }),
		Stated: statedOf(p), Provenance: provenanceOf(p),
	}, nil
}

func unitsOf(p *flavor.Profile) []UnitYield {
	return figure.List(measure.UnitsFor(p), func(u flavor.Unit) UnitYield {
		ml, _ := measure.MLPerUnit(u, p) // never fails: the unit comes from the profile's own list
		return UnitYield{string(u), figure.Round(ml, figure.ML)}
	})
}

// statedOf returns the figures that a record states, keyed by the field of the answer.
func statedOf(p *flavor.Profile) map[string]Stated {
	out := map[string]Stated{}
	for field, f := range map[string]flavor.Figure{
		"abv_pct": p.ABV, "sugar_g_per_l": p.Sugar, "acid_g_per_l": p.Acid, "bitter": p.Bitter,
		"salt_g_per_l": p.Salt, "fat_g_per_l": p.Fat, "texture_g_per_l": p.Texture,
		"sweeteners_g_per_l": p.Sweeteners, "caffeine_mg_per_l": p.Caffeine,
		"tannin_g_per_l": p.Tannin,
	} {
		if f.Origin != "" {
			out[field] = Stated{figure.Round(f.Value, figure.Density), Origin{figure.Round(f.Spread, figure.Density), string(f.Origin), f.Source}}
		}
	}
	return out
}

func provenanceOf(p *flavor.Profile) map[string]Origin {
	out := map[string]Origin{"aroma": {Spread: p.AromaSpread, Origin: string(p.AromaOrigin)}}
	for field, s := range statedOf(p) {
		out[field] = s.Origin
	}
	for _, y := range p.Yields {
		out["units."+string(y.Unit)] = Origin{figure.Round(y.Amount.Spread, figure.Density), string(y.Amount.Origin), y.Amount.Source}
	}
	worked := Origin{Origin: string(flavor.OriginComputed), Source: "from the other numbers of the profile"}
	for _, field := range []string{"sweet_g_per_l", "sour_g_per_l", "density_g_per_ml", "water_g_per_l"} {
		out[field] = worked
	}
	return out
}

// tellingOdorants is how many odorants of a lead an answer lists.
const tellingOdorants = 3

func leadsOf(s *sense.Space, p *flavor.Profile) []Lead {
	return figure.List(s.Leads(p), func(l sense.Lead) Lead {
		return Lead{l.Name, figure.Round(l.Share, figure.Likeness), figure.List(s.Odorants(l.Name, tellingOdorants), func(c sense.Carried) Odorant {
			o := Odorant{Name: c.Name, Importance: c.Importance}
			if c.ThresholdUGPerL > 0 {
				o.Threshold = &c.ThresholdUGPerL
			}
			return o
		})}
	})
}

func colourOf(s *sense.Space, p *flavor.Profile) Colour {
	v := s.PerML(p)
	return lookOf(v.Swatch())
}
