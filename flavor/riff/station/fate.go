package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/weigh"
)

// Volumes that a drink keeps to: common practice, no source.
const (
	leastDrinkML  = 60.0
	leastBeforeML = 55.0 // before ice
	mostDrinkML   = 450.0
	carryML       = 29.0 // the least that what holds alcohol comes to, seasonings aside
	usualBaseML   = 61.0
	mostBaseML    = 76.0 // of all bases, unless a given drink pours more
)

// MoreBase is how many times as much spirit as a given drink has is poured at most: two and a half
// ounces for two. Common practice, no source.
const MoreBase = 1.25

// Fate is what becomes of a settled draft.
type Fate int

// The fates.
const (
	Good  Fate = iota // balanced, and keeps to everything asked
	Off               // not balanced
	Unfit             // not poured, mixed or served as the trade does
	Limit             // breaks a limit
	Unmet             // does not meet every wish
	Alike             // too near to the drink asked about
)

// Fate judges a settled draft, and counts it if it is left out.
func (j *Job) Fate(s *Settled) (Fate, error) {
	iced, err := j.hotOnIce(s)
	switch {
	case err != nil:
		return Off, err
	case s.Score < weigh.BalancedFrom:
		j.Left.Off++
		return Off, nil
	case iced || !j.Fits(s):
		j.Left.Unfit++
		return Unfit, nil
	case !j.Limits.Keeps(&s.Spec, s.Drink):
		j.Left.ByLimit++
		return Limit, nil
	case j.lopsided(&s.Spec):
		j.Left.Off++
		return Off, nil
	case !j.meets(s):
		j.Left.Unmet++
		return Unmet, nil
	case j.From != nil && Apart(s.Glass, j.FromGlass) < j.leastFrom(s) && j.hasAll(j.From):
		j.Left.TooAlike++
		return Alike, nil
	}
	return Good, nil
}

// Fits reports whether the trade pours, mixes and serves a settled drink so: no pour is larger
// than proven drinks pour it, what is in the drink asks to be mixed and served so, its size is
// one that is served, and no two pours are such that proven drinks shun them together. What the
// drinks that were given do themselves is allowed.
func (j *Job) Fits(s *Settled) bool {
	least, most := leastDrinkML, mostDrinkML
	if j.FromDrink != nil {
		least, most = min(least, j.FromDrink.VolumeML), max(most, j.FromDrink.VolumeML)
	}
	if !j.Limits.Guest.NoAlcohol && !j.movesFree(&s.Spec) && s.Spec.MLOf(precedent.Carries) < j.leastCarried() {
		return false
	}
	if s.Spec.VolumeML() < j.leastPoured() || s.Spec.MLOf(spirit) > j.mostBase() {
		return false
	}
	cloys := precedent.Cloying(&s.Spec) && !slices.ContainsFunc(j.Given, precedent.Cloying)
	return !s.shunned && !cloys && !j.turnsSavoury(&s.Spec, s.Frame) && !j.keepsLittle(&s.Spec) && j.inBounds(&s.Spec) && j.Served(&s.Spec) && s.Drink.VolumeML >= least && s.Drink.VolumeML <= most
}

// mostForgone is how many pours of a drink that are at hand a riff without alcohol may do without:
// it is without its spirit already. Common practice, no source.
const mostForgone = 1

// keepsLittle reports whether a riff for a guest who drinks no alcohol pours nothing of the drink
// asked about, nor what is made without alcohol after it, or too little of the rest: ginger beer
// and coconut water are no riff of a drink of whiskey and vermouth.
func (j *Job) keepsLittle(s *flavor.Spec) bool {
	if !j.losesSpirit() {
		return false
	}
	forgone := 0
	for i := range j.From.Pours {
		p := j.From.Pours[i].Profile
		if _, there := j.Has(p); there && !s.HasProfile(p) {
			forgone++
		}
	}
	return forgone > mostForgone || !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return j.From.HasProfile(p.Profile) || p.Profile.StandsForABV() > 0 })
}

// softDrink reports whether a riff for a guest who drinks no alcohol is a soft drink: nothing in it
// stands for the alcohol of the drink asked about.
func (j *Job) softDrink(s *flavor.Spec) bool {
	if !j.losesSpirit() {
		return false
	}
	return !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return precedent.Carries(p.Profile) || p.Profile.StandsForABV() > 0 })
}

// leastCarried is what a drink must carry of what holds alcohol: an ounce, a half where less
// strength is wished, or what the drinks that were given do.
func (j *Job) leastCarried() float64 {
	least := carryML
	if j.From != nil && j.Limits.Lighter() {
		least = LeastBaseML
	}
	for _, g := range j.Given {
		least = min(least, g.MLOf(precedent.Carries))
	}
	return least
}

// movesFree reports whether a drink pours what must move and stands for something with
// alcohol: a spirit without it, or a wine.
func (j *Job) movesFree(s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		return j.Must[p.Profile.ID] && !precedent.Carries(p.Profile) && ratio.PerML(p.Profile)[ratio.Strong] > 0
	})
}

// Spares reports whether a drink goes without alcohol for nobody: it pours what stands for
// something with alcohol, no such bottle must move, and the guest takes alcohol.
func (j *Job) Spares(s *flavor.Spec) bool {
	stands := func(p flavor.Pour) bool { return p.Profile.StandsForABV() > 0 }
	moves := func(p flavor.Pour) bool { return j.Must[p.Profile.ID] && stands(p) }
	return !j.Limits.Guest.NoAlcohol && slices.ContainsFunc(s.Pours, stands) && !slices.ContainsFunc(s.Pours, moves)
}

// leastPoured is what goes into a drink at least, before ice, or what the drinks that
// were given pour: ice makes a full glass of a mouthful.
func (j *Job) leastPoured() float64 {
	least := leastBeforeML
	for _, g := range j.Given {
		least = min(least, g.VolumeML())
	}
	return least
}

// mostBase is the most that all bases of a drink come to: two and a half ounces, two
// in a riff, or a quarter more than the drinks that were given pour.
func (j *Job) mostBase() float64 {
	most := mostBaseML
	if j.From != nil {
		most = usualBaseML // a riff is no larger than it needs to be
	}
	for _, g := range j.Given {
		most = max(most, MoreBase*g.MLOf(spirit))
	}
	return most
}

// sweetFreeABV is the strength, in % vol, up to which what a bottle without alcohol stands for is
// an aperitif, a vermouth or a liqueur, and no spirit.
const sweetFreeABV = 20.0

// spirit reports whether an ingredient is a base by what it is or stands for: of the bottles
// without alcohol those that are sweet are poured beside one.
func spirit(p *flavor.Profile) bool {
	stands := p.StandsForABV()
	return p.Base() && (stands == 0 || stands > sweetFreeABV)
}

// What makes a riff lopsided: of sugar and acid that answered each other the acid is
// down to less than half, and the sugar is not down with it. The score tells the other
// case: nothing else covers acid. Common practice, no source.
const (
	leastAnswered = 2.0  // mL of syrup or lemon juice from which one answers the other
	mostlyGone    = 0.5  // share of the acid that is left
	leftBehind    = 0.30 // by which the share of the sugar that is left may be larger
)

// lopsided reports whether a riff takes away the acid and leaves the sugar that
// answered it, or as much by another syrup or liqueur. A soda keeps its own balance.
func (j *Job) lopsided(s *flavor.Spec) bool {
	if j.From == nil {
		return false
	}
	was, is := answered(j.From), answered(s)
	if was[ratio.Sour] < leastAnswered || was[ratio.Sweet] < leastAnswered {
		return false
	}
	sour, sweet := is[ratio.Sour]/was[ratio.Sour], is[ratio.Sweet]/was[ratio.Sweet]
	return sour < mostlyGone && sweet > sour+leftBehind
}

// hasAll reports whether every pour of a drink may be poured: of one that cannot be, the
// nearest is no repetition.
func (j *Job) hasAll(s *flavor.Spec) bool {
	return !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { _, ok := j.Has(p.Profile); return !ok })
}

// keepsRest reports whether a drink pours all of the drink asked about that may be poured.
func (j *Job) keepsRest(s *flavor.Spec) bool {
	return !slices.ContainsFunc(j.From.Pours, func(p flavor.Pour) bool {
		_, ok := j.Has(p.Profile)
		return ok && !s.HasProfile(p.Profile)
	})
}

// addsNothing reports whether a drink pours only what the drink asked about does, and nothing at
// hand is what the trade pours in place of the rest of that.
func (j *Job) addsNothing(s *flavor.Spec) bool {
	if slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return !j.From.HasProfile(p.Profile) }) {
		return false
	}
	return !slices.ContainsFunc(j.From.Pours, func(was flavor.Pour) bool {
		if _, there := j.Has(was.Profile); there {
			return false
		}
		return slices.ContainsFunc(j.Shelf, func(it Item) bool { return j.Customary(it.Profile, was.Profile) > 0 })
	})
}

// answered is what a drink holds of each kind without its length, and without the acid of
// milk, which answers no sugar.
func answered(s *flavor.Spec) (e ratio.Equivalents) {
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Class.Part() != flavor.PartLength {
			per := ratio.PerML(p.Profile)
			if p.Profile.Class.Part() == flavor.PartTexture {
				per[ratio.Sour] = 0
			}
			e.Add(&per, p.ML)
		}
	}
	return e
}

// leastFrom is the least distance of a draft from the drink asked about: less where it pours what
// a wish names, which is a change by itself.
func (j *Job) leastFrom(s *Settled) float64 {
	named := func(p flavor.Pour) bool { return j.Limits.Wants(p.Profile) && !j.From.HasProfile(p.Profile) }
	switch {
	case j.Limits.AsServed() && (s.Spec.Method != j.From.Method || s.Spec.Service != j.From.Service):
		return 0 // the other glass is what was asked for
	case slices.ContainsFunc(s.Spec.Pours, named):
		return LeastWished
	}
	return j.LeastApart()
}

// LeastApart is the least distance between two drinks of a list, and from the drink
// asked about.
func (j *Job) LeastApart() float64 {
	if j.From != nil && len(j.Limits.Aims) > 0 {
		return LeastWished
	}
	return LeastDistance
}

// hotFamilies are the families of drinks that are served hot.
var hotFamilies = [...]string{"hot", "toddy"}

// hotOnIce reports whether a draft is balanced as a hot drink, but served on
// ice: what a spirit needs beside hot coffee says nothing of cold.
func (j *Job) hotOnIce(s *Settled) (bool, error) {
	teaLike := func(p flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinTea }
	if s.Spec.Service == flavor.Up || s.Spec.Service == flavor.Hot || !slices.ContainsFunc(s.Spec.Pours, teaLike) {
		return false, nil
	}
	r, err := j.Station.Judge.Score(&s.Spec)
	if err != nil {
		return false, err
	}
	return slices.Contains(hotFamilies[:], r.Judgement.Fits[0].ID), nil
}
