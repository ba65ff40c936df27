package flavor

// Profile is what is known of one ingredient. Profiles are shared; treat them
// as read-only.
type Profile struct {
	ID      string // lower-case words joined by hyphens; never changes once published
	Name    string
	Aliases []string
	Class   Class
	// Legal names the legal definition that the record is held to, such as
	// "liqueur" or "London gin"; empty if none is claimed.
	Legal string

	ABV     Figure // % vol at 20 °C
	Sugar   Figure // g/L, all sugars
	Acid    Figure // g/L, all acids, as weighed
	Bitter  Figure // mg/L of quinine that taste as bitter
	Salt    Figure // g/L, sodium chloride
	Fat     Figure // g/L
	Texture Figure // g/L of what thickens beyond sugar: fat, protein, gum, pulp
	// Sweeteners is g/L of sucrose that tastes as sweet as what sweetens beside
	// the sugars: high-intensity sweeteners and sugar alcohols.
	Sweeteners Figure
	// Caffeine is mg/L; its bitterness is part of Bitter. Without an origin nobody has stated it.
	Caffeine Figure
	// Tannin is g/L of what dries the mouth, as weighed. Without an origin nobody has stated it.
	Tannin Figure

	Sugars SugarBlend // which sugars, and so how sweet
	Acids  AcidBlend  // which acids, and so how sour

	Aroma       Aroma   // intensities, see Families
	AromaSpread float64 // relative, one standard deviation: 0.25 is ± 25 %
	AromaOrigin Origin
	Materials   []MaterialShare // what it smells of, and the aroma is computed from
	Contents    []string        // materials known to be in it; allergens, animals and cautions follow from these

	Senses Senses // colour, bite, savour and the rest

	// AllergensKnown is false when nobody has stated what the ingredient is made
	// with; every allergen that is not marked then is [Unstated].
	AllergensKnown bool
	// Undisclosed is true where the maker keeps the recipe: every one of [Substances] that is not
	// marked then is [Unstated], whatever the label says of allergens.
	Undisclosed bool
	// Unread is true where nobody has stated what it is at all: it may come from animals and
	// hold alcohol too.
	Unread        bool
	AllergenMarks []AllergenMark // contained or possible
	FreeOf        []Allergen     // stated to be absent, where the rest is not known
	Animal        []string       // what comes from animals, see Animals
	Cautions      []string       // keys of the cautions that apply, see the caution list of the catalogue
	Carbonated    bool
	Making        string // for house-made things: how to make it

	Yields []Yield // what a piece, leaf, slice … gives

	// Worked out when the record is loaded.
	DensityGPerML float64 // at 20 °C
	WaterGPerML   float64 // grams of water in a millilitre
}

// MaterialShare is one material of an ingredient and the intensity it lends,
// on the scale of [AromaFamilies].
type MaterialShare struct {
	Material  string
	Intensity float64
}

// Yield says how many millilitres of the profile one unit gives.
type Yield struct {
	Unit   Unit
	Amount Figure // mL
}

// SugarBlend is a named mix of sugars by mass share; the shares sum to one.
type SugarBlend struct {
	Name                                         string
	Sucrose, Glucose, Fructose, Maltose, Lactose float64
	Dextrin                                      float64 // sugars longer than maltose
}

// Plus returns b with times × o added to each share; the name stays.
func (b SugarBlend) Plus(o *SugarBlend, times float64) SugarBlend {
	b.Sucrose += times * o.Sucrose
	b.Glucose += times * o.Glucose
	b.Fructose += times * o.Fructose
	b.Maltose += times * o.Maltose
	b.Lactose += times * o.Lactose
	b.Dextrin += times * o.Dextrin
	return b
}

// AcidBlend is a named mix of acids by mass share; the shares sum to one.
type AcidBlend struct {
	Name                                                                  string
	Citric, Malic, Tartaric, Lactic, Acetic, Phosphoric, Ascorbic, Quinic float64
}

// Plus returns b with times × o added to each share; the name stays.
func (b AcidBlend) Plus(o *AcidBlend, times float64) AcidBlend {
	b.Citric += times * o.Citric
	b.Malic += times * o.Malic
	b.Tartaric += times * o.Tartaric
	b.Lactic += times * o.Lactic
	b.Acetic += times * o.Acetic
	b.Phosphoric += times * o.Phosphoric
	b.Ascorbic += times * o.Ascorbic
	b.Quinic += times * o.Quinic
	return b
}

// Is reports whether two profiles are of one ingredient, told by the id.
func (p *Profile) Is(q *Profile) bool { return p.ID == q.ID }

// Yield returns the yield for a unit.
func (p *Profile) Yield(u Unit) (Yield, bool) {
	for _, y := range p.Yields {
		if y.Unit == u {
			return y, true
		}
	}
	return Yield{}, false
}

// The share of a drink that sparkles up to which whoever writes "shake" means all but that: proven drinks
// that are shaken and lengthened stop at 0.57 of soda or beer, and at 0.60 of sparkling wine.
const mostTopped, mostToppedWine = 0.575, 0.62

// MostTopped returns that share for what sparkles in a drink.
func (p *Profile) MostTopped() float64 {
	if p.Class == ClassSparklingWine {
		return mostToppedWine
	}
	return mostTopped
}
