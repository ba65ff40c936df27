package handling

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Way is one way to make a drink wrong.
type Way int

// The ways: common practice, no source.
const (
	StirredInstead Way = iota // of shaken
	ShakenInstead             // of stirred
	BuiltInstead              // of either, in its glass
	WithoutIce
	OnSlush    // ice that was half melted
	FromHotBar // with bottles and tins that stood in the heat
	Fizzless   // topped from a bottle that had lost its fizz
	NumWays
)

// Mishap is a drink made wrong in one way, and what stands in the glass then.
type Mishap struct {
	Way
	Served
}

// What ice and bottles are like where they spoil a drink; common practice, no source.
const (
	slushWetness = 0.4  // g of water on each g of ice: half of it is no ice any more
	hotBarC      = 35.0 // °C, of bottles and vessels beside an oven or in the sun
)

// making is how a drink is made in one of the ways.
type making struct {
	ice    mix.Ice
	method flavor.Method // instead of the proper one; empty leaves it
	flat   bool
	may    func(*flavor.Spec) bool // of drinks that are made so by mistake; they all meet ice
}

// makings are how a drink is made in each way.
var makings = [NumWays]making{
	StirredInstead: {method: flavor.Stir, may: func(s *flavor.Spec) bool { return shaken(s.Method) }},
	ShakenInstead:  {method: flavor.Shake, may: func(s *flavor.Spec) bool { return s.Method == flavor.Stir }},
	BuiltInstead: {method: flavor.Build, may: func(s *flavor.Spec) bool {
		return (shaken(s.Method) || s.Method == flavor.Stir) && s.Service != flavor.Up
	}},
	WithoutIce: {ice: mix.Ice{Kind: mix.NoIce}, may: anyDrink},
	OnSlush:    {ice: mix.Ice{Wetness: slushWetness}, may: anyDrink},
	FromHotBar: {ice: mix.Ice{BarC: hotBarC}, may: anyDrink},
	Fizzless:   {flat: true, may: func(s *flavor.Spec) bool { return s.Has(fizzes) }},
}

func anyDrink(*flavor.Spec) bool { return true }

func shaken(m flavor.Method) bool { return m == flavor.Shake || m == flavor.DryShake }

func fizzes(p *flavor.Profile) bool { return p.Carbonated }

// Bench makes drinks right and wrong. It is safe for concurrent use.
type Bench struct {
	proper *mix.Mixer
	wrong  [NumWays]*mix.Mixer
}

// NewBench returns a bench whose ice, when it is right, is that of a mixer.
func NewBench(proper *mix.Mixer) (*Bench, error) {
	b := &Bench{proper: proper}
	for way := range makings {
		m, err := proper.WithIce(makings[way].ice)
		if err != nil {
			return nil, fmt.Errorf("handling: ice of way %d: %w", way, err)
		}
		b.wrong[way] = m
	}
	return b, nil
}

// Mishaps returns the drink properly made, and all the ways to make it wrong that show in the
// glass by a noticeable step at least; none of a drink that meets no ice.
func (b *Bench) Mishaps(s *flavor.Spec) (proper Served, made []Mishap, err error) {
	d, err := b.proper.Mix(s)
	if err != nil {
		return Served{}, nil, err
	}
	proper = servedOf(s, d, false)
	if d.IceWaterG <= 0 || s.Service == flavor.Hot {
		return proper, nil, nil
	}
	for way := range makings {
		w := &makings[way]
		if !w.may(s) {
			continue
		}
		wrong := s.Clone()
		if w.method != "" {
			wrong.Method = w.method
		}
		d, err := b.wrong[way].Mix(&wrong)
		if err != nil {
			return proper, nil, err
		}
		if g := servedOf(&wrong, d, w.flat); g.Steps(&proper) >= leastShown {
			made = append(made, Mishap{Way(way), g})
		}
	}
	return proper, made, nil
}
