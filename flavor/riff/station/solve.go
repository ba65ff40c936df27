package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// Sketch is a drink whose amounts are still to be settled.
type Sketch struct {
	Spec   flavor.Spec
	Kind   Kind
	Moves  int          // how many moves made it
	Lost   int          // pours left out without anything in their place
	Likely float64      // how much it looks like a proven drink, 0 to 1
	Frame  *flavor.Spec // the proven drink that it stands on, nil if it stands on none
	Rank   float64      // order in which drafts of a kind are settled
	Turned bool         // it pours what its parent does in amounts that no steps lead to: the larger pour as the smaller, or by the spoon
	// Least is the smallest pour of an ingredient, by id, that still does the work
	// of what it stands for, in mL.
	Least map[string]float64
	// Most is the largest pour of an ingredient, by id, that still is the accent it came in
	// as, in mL.
	Most map[string]float64
}

// Settled is a draft with its amounts, mixed and judged.
type Settled struct {
	Sketch
	Score float64
	Drink *mix.Drink
	Glass *sense.Percept
	Merit float64 // what the amounts came to

	carried float64 // how much of that is by what a bartender reaches for first, 0 to 1
	met     float64 // how well it meets the wishes for more or less, 0 to 1
	far     float64 // just-noticeable differences from the drink asked about, that count; without wishes those beyond reachJND
	plain   bool    // a wish says what to change, and only amounts change, or something is left out
	custom  float64 // how far it pours what the trade does in place of what may not be poured, 0 to 1
	idle    int     // how many of the things that came in serve no wish
	strays  bool    // a wish says what to change, and it is on another spirit for no wish
	swerves bool    // a wish says what to change, and it is served otherwise for nothing
	sheds   bool    // a pour is gone that a wish for more is met with, and nothing that does its work is
	drops   bool    // a pour is left out, where no wish says what there should be less of
	burdens int     // allergens that came in beside what is wished
	soft    bool    // it is a soft drink, whatever family its score holds it against
	nearest bool    // the drink asked about cannot be poured, and all of it that can is here
	odd     float64 // how strange the company is that its pours keep
	shunned bool    // whether proven drinks shun some of it
	short   float64 // just-noticeable differences that the wishes still lack
	whole   bool    // the wishes are met against the drink asked about, and not only against the rest of it

	unsettles float64 // what it must earn for its guest, see [cover.Guest.Unsettles]
}

// What the amounts are weighed by, in points of score.
const (
	enough        = 85.0 // a score beyond this is worth no more: the drink is its family's
	pointsPerJND  = 25.0 // what a just-noticeable difference short of a wish costs
	pointsPerABV  = 12.0 // what 1 % vol beyond a limit costs
	pointsPerMove = 0.6  // what a step of the jigger away from the draft costs
	pointsPerVol  = 40.0 // what the logarithm of the volume, beyond its room, costs
	maxClimb      = 14   // steps of the jigger that amounts may take in all
	roomSmaller   = 0.80 // of the volume before ice
	roomLarger    = 1.25
)

// solver seeks the amounts of one draft.
type solver struct {
	job            *Job
	spec           *flavor.Spec
	build          *weigh.Build
	start          []float64
	ml             []float64
	amount         []float64
	least          []float64
	most           []float64
	steps          []int // taken by each pour, up and down
	water          float64
	ledger         []mix.Ledger
	aims           aim.Ready
	floor, ceiling map[string]float64 // by id, in mL
	room           float64            // volume before ice that the draft set out with
}

// Settle settles the amounts of a draft by climbing, one step of the jigger at a
// time, or two where one does not help, until nothing improves. It returns nil
// if the draft cannot be mixed. A riff is another drink than the one it comes from, so it is held
// against no proven drink of that name.
func (j *Job) Settle(d *Sketch) (*Settled, error) {
	spec := d.Spec
	spec.Name = ""
	drink, err := j.Station.Mixer.Mix(&spec)
	if err != nil {
		return nil, err
	}
	s := &solver{job: j, spec: &spec, floor: d.Least, ceiling: d.Most, water: drink.VolumeML - drink.BeforeML}
	if s.build, err = j.Station.Judge.Prepare(&spec); err != nil {
		return nil, nil // nothing in it to weigh: no drink
	}
	s.water /= drink.BeforeML
	s.begin()
	merit := s.climb()
	out := &Settled{Sketch: *d, Merit: merit}
	out.Spec = s.result()
	if out.Drink, err = j.Station.Mixer.Mix(&out.Spec); err != nil {
		return nil, err
	}
	// While amounts move, what they are compared with stays that of the draft; what
	// is listed is scored as anyone would score it.
	if out.Score, err = j.Station.Judge.ScoreOnly(&out.Spec); err != nil {
		return nil, err
	}
	out.Glass = j.Station.Space.Percept(&out.Spec, out.Drink)
	out.odd, out.shunned = j.company(&out.Spec, d.Frame)
	if j.From != nil {
		since := j.since(j.wished, out)
		out.short = since.Shortfall(j.Limits.Aims)
		whole := j.since(aim.Mixed{Spec: j.From, Drink: j.FromDrink, Glass: j.FromGlass}, out)
		out.whole = whole.Shortfall(j.Limits.Aims) == 0
		out.unsettles = j.Limits.Guest.Unsettles(&out.Spec, j.From)
		out.met = since.Met(j.Limits.Aims)
		out.carried = since.Carried(j.Limits.Aims)
		out.plain = j.plain(out)
		out.soft = j.softDrink(&out.Spec)
		out.custom = j.customary(&out.Spec)
		out.idle = j.idle(&out.Spec)
		out.strays, out.sheds = j.strays(&out.Spec), j.sheds(&out.Spec)
		out.swerves, out.burdens = j.swerves(&out.Spec), j.burdens(&out.Spec)
		out.drops = d.Lost > 0 && j.hasAll(j.From) && j.Limits.Adds()
		out.nearest = (d.Lost == 0 || out.custom >= 1 || j.addsNothing(&out.Spec)) && len(out.Spec.Pours) <= len(j.From.Pours) && !j.hasAll(j.From) && j.keepsRest(&out.Spec)
		if j.Limits.Wished() || !j.hasAll(j.From) {
			out.far = Apart(j.wished.Glass, out.Glass)
		} else {
			out.far = farUnasked * max(0, Apart(j.FromGlass, out.Glass)-reachJND)
		}
	}
	return out, nil
}

func (s *solver) begin() {
	if j := s.job; j.From != nil {
		s.aims = aim.Prepare(j.Station.Space, j.Limits.Aims, &j.wished, s.spec)
	}
	s.ml = s.build.Amounts()
	s.start = slices.Clone(s.ml)
	s.steps = make([]int, len(s.ml))
	s.amount = make([]float64, len(s.ml))
	s.least = make([]float64, len(s.ml))
	s.most = make([]float64, len(s.ml))
	s.ledger = make([]mix.Ledger, len(s.ml))
	for i := range s.spec.Pours {
		p := &s.spec.Pours[i]
		s.amount[i], s.most[i] = p.Amount, s.job.MostIn(s.spec, p.Profile)
		if most, bound := s.ceiling[p.Profile.ID]; bound {
			s.most[i] = min(s.most[i], max(most, p.ML))
		}
		if s.job.Lessens(p.Profile) {
			s.most[i] = min(s.most[i], max(p.ML, s.job.given(p.Profile)))
		}
		s.least[i] = max(s.job.LeastOf(p), s.floor[p.Profile.ID])
		if s.job.keepsBase() && p.Profile.Base() {
			s.least[i] = max(s.least[i], baseKept*p.ML)
		}
		if s.job.keepsBase() && s.job.knownBy(p.Profile) {
			s.least[i] = max(s.least[i], juiceKept*p.ML)
		}
		if s.job.standsOn(p.Profile) {
			s.least[i] = max(s.least[i], wineKept*p.ML)
		}
		s.keepBesideLength(i)
		s.room += p.ML
		if it, ok := s.job.Has(p.Profile); ok {
			s.ledger[i] = it.ledger
		} else {
			s.ledger[i] = mix.PerML(p.Profile)
		}
	}
}

// keepBesideLength keeps the measure of a pour where a wish moves the length of a long drink and
// nothing else: no less of what the length is poured on makes a drink shorter, and no more of its
// spirit makes it longer.
func (s *solver) keepBesideLength(i int) {
	longer, shorter := s.job.Limits.Relengths()
	p := &s.spec.Pours[i]
	if s.job.From == nil || Lengthens(p) || !slices.ContainsFunc(s.job.From.Pours, func(x flavor.Pour) bool { return Lengthens(&x) }) {
		return
	}
	switch {
	case shorter:
		s.least[i] = max(s.least[i], p.ML)
	case longer && p.Profile.Base():
		s.most[i] = min(s.most[i], p.ML)
	}
}

// How much of a base stays where something else is wished for, and of the juice, tea or
// coffee that fills most of the drink: a smaller drink is no more bitter one, and without
// tomato nothing is a tomato drink. Common practice, no source.
const (
	baseKept  = 0.75
	juiceKept = 0.6
	wineKept  = 0.5 // of each wine or liqueur that a drink without a spirit stands on
)

// knownBy reports whether the drink asked about is known by an ingredient that lengthens
// it: most of what goes in is that, and it is no soda.
func (j *Job) knownBy(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartLength && p.Class.Kin() != flavor.KinSparkling && 2*j.given(p) > j.From.VolumeML()
}

// standsOn reports whether the drink asked about stands on an ingredient for want of a
// spirit: what is poured beside it is no drop of it.
func (j *Job) standsOn(p *flavor.Profile) bool {
	return j.From != nil && p.Class.Part() == flavor.PartModifier && j.given(p) >= leastPourML && !j.From.HasPart(flavor.PartBase)
}

// keepsBase reports whether a base stays about as it is: where a wish for more or less
// says what to change, and that is not the strength.
func (j *Job) keepsBase() bool {
	return j.From != nil && len(j.Limits.Aims) > 0 && !j.Limits.Lighter()
}

// merit weighs the amounts: the score, less what wishes and limits lack, less
// what it took to get there.
func (s *solver) merit() float64 {
	m := min(s.build.Score(s.ml), enough) - s.lacks()
	var volume float64
	for i := range s.ml {
		volume += s.ml[i]
		m -= pointsPerMove * math.Abs(float64(s.steps[i]))
	}
	ratio := volume / s.room
	m -= pointsPerVol * max(0, math.Log(roomSmaller/ratio), math.Log(ratio/roomLarger))
	return m
}

// lacks estimates, in points, how far wishes and strength limits are from met,
// with the water of the draft's own ice.
func (s *solver) lacks() float64 {
	l := s.job.Limits
	weakest, strongest := l.Strengths()
	if len(l.Aims) == 0 && math.IsInf(strongest, 1) && weakest == 0 {
		return 0
	}
	var volume, ethanol float64
	for i := range s.ml {
		volume += s.ml[i]
		ethanol += s.ml[i] * s.ledger[i].Ethanol
	}
	volume *= 1 + s.water
	abv := 100 * ethanol / mix.EthanolDensity / volume
	lack := pointsPerABV * max(0, abv-strongest*abvMargin, weakest-abv*abvMargin)
	return lack + pointsPerJND*s.aims.Lacks(s.ml, volume)
}

// abvMargin keeps an estimate of strength on the safe side of a limit.
const abvMargin = 0.98

func (s *solver) result() flavor.Spec {
	out := s.spec.Clone()
	for i := range out.Pours {
		out.Pours[i].Amount, out.Pours[i].ML = s.amount[i], s.ml[i]
	}
	return out
}
