package handling

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Fault is one way to make a drink wrong, and what stands in the glass then.
type Fault struct {
	ID   string
	Did  string // what was done: "stirred instead of shaken"
	Mend string // what to do the next time, as a sentence
	Glass
}

// What ice and bottles are like where they spoil a drink; common practice, no source.
const (
	slushWetness = 0.4  // g of water on each g of ice: half of it is no ice any more
	hotBarC      = 35.0 // °C, of bottles and vessels beside an oven or in the sun
)

// way is how a drink is made wrong.
type way struct {
	id, did, mend string
	ice           mix.Ice
	method        flavor.Method // instead of the proper one; empty leaves it
	flat          bool
	may           func(*flavor.Spec) bool // of drinks that are made so by mistake; they all meet ice
}

// ways lists how drinks are made wrong: common practice, no source.
var ways = []way{
	{id: "stirred", did: "stirred instead of shaken", method: flavor.Stir,
		mend: "Shake it hard, about 12 s: that is colder than stirring, and beats air in.",
		may:  func(s *flavor.Spec) bool { return shaken(s.Method) }},
	{id: "shaken", did: "shaken instead of stirred", method: flavor.Shake,
		mend: "Stir it for 20 to 30 s: shaking waters it further and fills it with air.",
		may:  func(s *flavor.Spec) bool { return s.Method == flavor.Stir }},
	{id: "built", did: "built in its glass, neither shaken nor stirred", method: flavor.Build,
		mend: "Shake or stir it before it meets the ice of its glass, which chills it less and waters it little.",
		may: func(s *flavor.Spec) bool {
			return (shaken(s.Method) || s.Method == flavor.Stir) && s.Service != flavor.Up
		}},
	{id: "no-ice", did: "made without ice", ice: mix.Ice{Kind: mix.NoIce},
		mend: "Ice does two things, it chills and it waters: without it the drink is warm, short and strong.",
		may:  func(*flavor.Spec) bool { return true }},
	{id: "slush", did: "made on slush, ice that was half melted", ice: mix.Ice{Wetness: slushWetness},
		mend: "Tip the water off and take fresh ice: water on the ice goes into the drink and cools nothing.",
		may:  func(*flavor.Spec) bool { return true }},
	{id: "hot-bar", did: "made with bottles and tins that stood in the heat", ice: mix.Ice{BarC: hotBarC},
		mend: "Keep bottles and vessels out of the heat: the warmer they are, the more ice melts before the drink is cold.",
		may:  func(*flavor.Spec) bool { return true }},
	{id: "flat", did: "topped from a bottle that had lost its fizz", flat: true,
		mend: "Open a fresh, cold bottle: the amounts are right, and the fizz is half of such a drink.",
		may:  func(s *flavor.Spec) bool { return s.Has(fizzes) }},
}

func shaken(m flavor.Method) bool { return m == flavor.Shake || m == flavor.DryShake }

func fizzes(p *flavor.Profile) bool { return p.Carbonated }

// Bench makes drinks right and wrong. It is safe for concurrent use.
type Bench struct {
	proper *mix.Mixer
	wrong  []*mix.Mixer // in the order of ways
}

// NewBench returns a bench whose ice, when it is right, is that of a mixer.
func NewBench(proper *mix.Mixer) (*Bench, error) {
	b := &Bench{proper: proper}
	for i := range ways {
		m, err := proper.WithIce(ways[i].ice)
		if err != nil {
			return nil, fmt.Errorf("handling: %s: %w", ways[i].id, err)
		}
		b.wrong = append(b.wrong, m)
	}
	return b, nil
}

// Faults returns the drink properly made, and all the ways to make it wrong that show in the
// glass by a noticeable step at least; none of a drink that meets no ice.
func (b *Bench) Faults(s *flavor.Spec) (proper Glass, faults []Fault, err error) {
	d, err := b.proper.Mix(s)
	if err != nil {
		return Glass{}, nil, err
	}
	proper = glassOf(s, d, false)
	if d.IceWaterG <= 0 || s.Service == flavor.Hot {
		return proper, nil, nil
	}
	for i := range ways {
		w := &ways[i]
		if !w.may(s) {
			continue
		}
		made := s.Clone()
		if w.method != "" {
			made.Method = w.method
		}
		d, err := b.wrong[i].Mix(&made)
		if err != nil {
			return proper, nil, err
		}
		if g := glassOf(&made, d, w.flat); g.Steps(&proper) >= leastShown {
			faults = append(faults, Fault{ID: w.id, Did: w.did, Mend: w.mend, Glass: g})
		}
	}
	return proper, faults, nil
}
