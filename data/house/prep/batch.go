package prep

import (
	"fmt"
	"math"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Container is the vessel of a batch.
type Container struct {
	Name string
	ML   float64
}

// The usual containers; the keg is the small one of 5 US gallons.
var (
	Bottle750  = Container{"750 ml bottle", 750}
	Bottle1000 = Container{"1 litre bottle", 1000}
	Keg        = Container{"19 litre keg", 18927}
)

// Storage is where a batch is kept, which also decides how it is served.
type Storage string

// ToOrder means that the drinks are shaken or stirred to order; then the batch contains
// no water.
const (
	Fridge  Storage = "fridge"
	Freezer Storage = "freezer"
	ToOrder Storage = "to order"
)

// Temperatures of the places, in °C. A batch stays liquid down to freezerMargin below the
// freezer's temperature. Common practice.
const (
	freezerC      = -18
	freezerMargin = 1
)

// laterStepML is the mark of a jigger to which the water for a glass is rounded up; then the batch holds
// a little less, and stays as liquid.
const laterStepML = 5

// Target says how much to make and where it is kept. Either Servings or Fill is set, not
// both.
type Target struct {
	Servings   float64
	Fill       Container
	Place      Storage
	JuiceApart bool // leaves fresh juice out, to be added to each drink
}

// BatchLine is one ingredient of a batch.
type BatchLine struct {
	Ingredient string // id
	Name       string
	ML, G      float64 // exact
	JugML      float64 // rounded to the marks of a jug or a syringe
	ScaleG     float64 // of JugML, rounded to the display of a scale, so that both pour the same batch
	// Count is set for what is counted, such as sugar cubes; otherwise 0.
	Count float64
	Unit  flavor.Unit
	Free  bool // still water, which costs nothing
}

// Batch is the plan of a drink made ahead.
type Batch struct {
	Servings  float64
	Lines     []BatchLine // in the order of the spec, water last
	Hot       bool        // its drink is served hot, without ice
	Water     BatchLine   // replaces the ice's melt water; zero if made to order
	LaterML   float64     // water per serving that would freeze the batch: add it in the glass
	Sum       BatchLine   // of the lines that are measured, each as it is rounded; without a name
	TotalML   float64     // of the mixture at 20 °C, which differs from the sum by rounding, and as spirit and water shrink
	ServingML float64     // volume to pour for one serving
	ABVPct    float64     // of the mixture
	FreezingC float64
	// ByJugABVPct and ByScaleABVPct are the strength of the mixture with rounded amounts.
	ByJugABVPct, ByScaleABVPct float64
	Tops                       []flavor.Pour // added to each glass at the end: sparkling ingredients and tops
	Apart                      []flavor.Pour // added to each drink: egg, foam, herbs, pieces of fruit, and juice if JuiceApart is set
	Keep                       Keep
	Notes                      []string
}

// Scale plans a batch. The water is what the ice would add to the whole drink by the mix
// model, including what is left out of the batch. In the freezer, water that would turn
// the batch to slush is left for the glass. Sparkling and perishable ingredients are left
// out. It fails with [house.ErrInvalid] if the target sets neither or both of Servings
// and Fill, or if nothing of the drink can be bottled, and as [mix.Mixer.Batch] does.
func Scale(m *mix.Mixer, s flavor.Spec, t Target, made []house.Made) (*Batch, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	bottled, apart := takeApart(s, t.JuiceApart)
	if len(bottled.Pours) == 0 {
		return nil, &house.Error{Kind: house.ErrInvalid, Op: "batch", Key: s.Name,
			Message: "nothing of it can be made ahead: what is fresh goes into each drink"}
	}
	one, err := m.Batch(&bottled, 1)
	if err != nil {
		return nil, err
	}
	whole, err := m.Batch(&s, 1) // the ice also dilutes what is left out
	if err != nil {
		return nil, err
	}
	b := &Batch{ABVPct: one.ABV, FreezingC: one.FreezingC, Tops: one.Tops, Apart: apart, Notes: apartNotes(apart, t.Place, s.Service == flavor.Hot)}
	if b.Hot = s.Service == flavor.Hot; b.Hot {
		b.Notes = append(b.Notes, hotNote)
	}
	var dry mix.Ledger
	for i := range one.Bottle.Pours {
		per := mix.PerML(one.Bottle.Pours[i].Profile)
		dry = dry.Plus(&per, one.Bottle.Pours[i].ML)
	}
	water := b.water(m, dry, whole.WaterML, t.Place)
	wet := dry
	wet.Water += water * mix.WaterDensity
	b.ServingML, b.ABVPct, b.FreezingC = wet.VolumeML(), wet.ABV(), m.FreezingC(&wet)
	if b.Servings = t.Servings; b.Servings == 0 {
		b.Servings = t.Fill.ML / b.ServingML
	}
	b.fill(one.Bottle.Pours, water)
	for range mostTries {
		if t.Fill.ML == 0 || b.Sum.JugML <= (1+unseen)*t.Fill.ML {
			break
		}
		b.Servings *= min(t.Fill.ML/b.Sum.JugML, leastShrink)
		b.fill(one.Bottle.Pours, water)
	}
	b.TotalML = b.ServingML * b.Servings
	b.Keep = KeepOf(one.Bottle, b.ABVPct, made)
	return b, nil
}

func (t Target) check() error {
	bad := func(format string, args ...any) error {
		return &house.Error{Kind: house.ErrInvalid, Op: "batch", Key: t.Fill.Name, Message: fmt.Sprintf(format, args...)}
	}
	finite := func(v float64) bool { return v >= 0 && v <= 1e6 }
	switch {
	case t.Place != Fridge && t.Place != Freezer && t.Place != ToOrder:
		return bad("place %q is not known; use %q, %q or %q", t.Place, Fridge, Freezer, ToOrder)
	case !finite(t.Servings) || !finite(t.Fill.ML):
		return bad("%v servings or %v mL cannot be made", t.Servings, t.Fill.ML)
	case (t.Servings > 0) == (t.Fill.ML > 0):
		return bad("say how many servings, or which container to fill")
	}
	return nil
}

// hotNote says how a batch comes to the heat at which its drink is served: alcohol boils off long
// before water does. Common practice, no source.
const hotNote = "It is served hot and kept cold: warm what is ordered with a lid on, well below the boil, since alcohol leaves with the steam, into a warmed glass. What is brewed is better brewed fresh and poured hot on the rest."

// water returns how much of a serving's water goes into the batch, and notes how much
// does not.
func (b *Batch) water(m *mix.Mixer, dry mix.Ledger, wanted float64, place Storage) float64 {
	freezes := func(ml float64) bool {
		l := dry
		l.Water += ml * mix.WaterDensity
		return m.FreezingC(&l) > freezerC-freezerMargin
	}
	switch {
	case b.Hot: // no ice waters it
		return wanted
	case place == ToOrder:
		b.Notes = append(b.Notes, "No water: shake or stir each serving with ice.")
		return 0
	case place == Fridge || !freezes(wanted):
		return wanted
	case freezes(0):
		b.Notes = append(b.Notes, fmt.Sprintf("Too weak for a freezer at %d °C even without water: it turns to slush. Keep it in the fridge.", freezerC))
		return wanted
	}
	most := mix.Bisect(0, wanted, func(ml float64) bool { return !freezes(ml) })
	b.LaterML = min(math.Ceil((wanted-most)/laterStepML)*laterStepML, wanted)
	b.Notes = append(b.Notes, fmt.Sprintf("With all its water it would freeze at %d °C: add %.0f ml of cold water to each glass.", freezerC, b.LaterML))
	return wanted - b.LaterML
}

// A batch whose lines, rounded to the marks of a jug, are more together than its container holds is made
// smaller in such steps, at most so often; what is over by less than anybody reads off a jug stays.
const (
	unseen      = 0.002
	leastShrink = 0.999
	mostTries   = 50
)

// fill computes the lines and the effect of rounding on the strength.
func (b *Batch) fill(pours []flavor.Pour, waterML float64) {
	b.Lines, b.Sum = nil, BatchLine{}
	var jug, scale mix.Ledger
	for _, p := range pours {
		l := line(p, b.Servings)
		b.Lines = append(b.Lines, l)
		per := mix.PerML(p.Profile)
		if l.Count > 0 {
			jug, scale = jug.Plus(&per, l.ML), scale.Plus(&per, l.ML)
			continue
		}
		jug, scale = jug.Plus(&per, l.JugML), scale.Plus(&per, l.ScaleG/p.Profile.DensityGPerML)
	}
	if ml := waterML * b.Servings; ml > 0 {
		b.Water = BatchLine{Ingredient: "", Name: "water, in place of the ice", ML: ml, Free: true}
		b.Water.round(mix.WaterDensity)
		b.Lines = append(b.Lines, b.Water)
		jug.Water += b.Water.JugML * mix.WaterDensity
		scale.Water += b.Water.ScaleG
	}
	b.ByJugABVPct, b.ByScaleABVPct = jug.ABV(), scale.ABV()
	b.sum()
}

// sum adds up the lines that are measured. What is counted has no volume or weight that
// somebody would pour.
func (b *Batch) sum() {
	for i := range b.Lines {
		if l := &b.Lines[i]; l.Count == 0 {
			b.Sum.ML, b.Sum.G = b.Sum.ML+l.ML, b.Sum.G+l.G
			b.Sum.JugML, b.Sum.ScaleG = b.Sum.JugML+l.JugML, b.Sum.ScaleG+l.ScaleG
		}
	}
	b.Sum.JugML, b.Sum.ScaleG = math.Round(100*b.Sum.JugML)/100, math.Round(100*b.Sum.ScaleG)/100 // sums of quarters and tenths
}

func line(p flavor.Pour, servings float64) BatchLine {
	l := BatchLine{Ingredient: p.Profile.ID, Name: p.Profile.Name, ML: p.ML * servings, Free: p.Profile.Class.Free()}
	if p.Unit.Counted() {
		l.Count, l.Unit = math.Max(1, math.Round(p.Amount*servings)), p.Unit
	}
	l.round(p.Profile.DensityGPerML)
	return l
}

// round sets what is measured of a line, and what both its amounts weigh, by its density in g/mL.
func (l *BatchLine) round(density float64) {
	l.JugML = roundTo(l.ML, jugStep(l.ML))
	l.G = l.ML * density
	l.ScaleG = roundTo(l.JugML*density, scaleStep(l.JugML*density))
}

// jugStep returns the distance between the marks of the vessel used for a volume, in mL:
// a syringe, a small or a large jug. What is more than a jug holds is poured in several, or in bottles
// and a rest, so that its last jug still has marks of 10 mL; only from a canister on it has not.
// Common practice.
func jugStep(ml float64) float64 {
	switch {
	case ml < 10:
		return 0.25
	case ml < 50:
		return 1
	case ml < 500:
		return 5
	case ml < 10000:
		return 10
	}
	return 50
}

// scaleStep returns the resolution of the scale used for a weight, in g: a pocket scale
// up to 200 g, a kitchen scale above. Common practice.
func scaleStep(g float64) float64 {
	switch {
	case g < 200:
		return 0.1
	case g < 5000:
		return 1
	}
	return 5
}

// roundTo rounds to a multiple of step, but never to zero.
func roundTo(v, step float64) float64 {
	if v <= 0 {
		return 0
	}
	n := math.Max(1, math.Round(v/step))
	if step < 1 {
		return n / math.Round(1/step) // dividing is exact for quarters, and rounds only once for tenths
	}
	return n * step
}
