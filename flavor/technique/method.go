package technique

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/mix"
)

// Flaw is what can be wrong with how a drink is made.
type Flaw string

// The flaws: common practice, no source.
const (
	EggUnshaken Flaw = "egg unshaken" // raw egg or a foam in what is not shaken
	Unshaken    Flaw = "unshaken"     // citrus, cream or coffee in what is only stirred
	Uniced      Flaw = "uniced"       // a sour, or spirit with vermouth, built where no ice is
	Curdled     Flaw = "curdled"      // milk or cream with acid
	Flat        Flaw = "flat"         // what sparkles is shaken or blended
	HotOnIce    Flaw = "hot on ice"   // what is hot is shaken, blended or stirred on ice
	FatSet      Flaw = "fat set"      // butter or oil in a cold drink
	Clouded     Flaw = "clouded"      // nothing but what is clear, shaken or blended
)

// Misstep is a flaw of one drink.
type Misstep struct {
	Flaw    Flaw
	Profile *flavor.Profile // the pour that suffers
	With    *flavor.Profile // the pour that does it; nil if it is the method
	Edges   float64         // as of the other reasons why a drink is not balanced
}

// Edges of a fault of method with plenty of the pour in question. With slightMisstep a drink is
// just off what is balanced; with fullMisstep it is near at best; with ruinMisstep, which nobody
// can serve, and with dangerMisstep it is off.
const (
	slightMisstep = 1.3
	fullMisstep   = 1.6
	ruinMisstep   = 2.2
	dangerMisstep = 2.5
)

// MisstepsOf tells what is wrong with how the drink with other amounts is made.
// Every fault grows gradually with the pours that bring it. stirred returns how surely a
// drink made of the same things, but for what is sour, is stirred, 0 to 1; it is asked only where
// that tells.
func MisstepsOf(spec *flavor.Spec, parts []makeup.Part, ml []float64, stirred func() float64, tell func(Misstep)) {
	w := workshop{spec: spec, parts: parts, ml: ml, total: floats.Sum(ml), stirred: stirred, tell: tell}
	w.flat()
	w.eggUnshaken()
	w.unshaken()
	w.uniced()
	w.hotOnIce()
	w.fatSet()
	w.curdled()
	w.clouded()
}

// workshop is a drink with other amounts, as its making is looked at.
type workshop struct {
	spec    *flavor.Spec
	parts   []makeup.Part
	ml      []float64
	total   float64        // mL
	stirred func() float64 // as of MisstepsOf
	tell    func(Misstep)
}

// of returns how many mL of the drink are of a kind, and the ingredient that most
// of it is; nil if there is none.
func (w *workshop) of(is func(*flavor.Pour) bool) (float64, *flavor.Profile) {
	var amount, most float64
	var by *flavor.Profile
	for i := range w.spec.Pours {
		if p := &w.spec.Pours[i]; is(p) && w.ml[i] > 0 {
			amount += w.ml[i]
			if w.ml[i] > most {
				most, by = w.ml[i], p.Profile
			}
		}
	}
	return amount, by
}

// say tells a fault that grows from nothing at a share of the drink to its full at
// another.
func (w *workshop) say(f Flaw, by *flavor.Profile, share, from, to, full float64) {
	if x := makeup.Ramp(share, from, to); x > 0 && by != nil {
		w.tell(Misstep{Flaw: f, Profile: by, Edges: full * x})
	}
}

func lateOn(p *flavor.Pour) bool { return p.After || p.Unit.After() }

func foamy(p *flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinFoam }

func sharp(p *flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartSour }

func bubbly(p *flavor.Pour) bool { return p.Profile.Carbonated }

// rich reports whether a pour is cream or a liqueur of it, and no butter.
func rich(p *flavor.Pour) bool {
	return p.Profile.Cream() && p.Profile.Fat.Value < setFatGPerL || p.Profile.Class == flavor.ClassCreamLiqueur
}

// brewedDark reports whether a pour is coffee, whose foam is half of a drink that is
// served up.
func brewedDark(p *flavor.Pour) bool { return p.Profile.Class.Roasted() }

// The share of what sparkles, of a drink, from which nobody would shake it at all; up to
// [flavor.Profile.MostTopped] it is read as added afterwards.
const neverShaken, neverShakenWine = 0.625, 0.70

// flat tells whether what sparkles is shaken. A bartender reads "shake" as: all but
// the soda, whatever else goes in afterwards too. It is not read so if the draft has
// everything shaken, if nothing else in it wants shaking, or if hardly anything else is
// in it. A blender takes everything.
func (w *workshop) flat() {
	if !w.spec.Method.Aerates() {
		return
	}
	inside, by := w.of(func(p *flavor.Pour) bool { return bubbly(p) && !lateOn(p) })
	if by == nil {
		return
	}
	cloudy, _ := w.of(func(p *flavor.Pour) bool { return p.Profile.Class.Shaken() && !mix.AfterIce(p) })
	x := makeup.Presence(inside, w.total, makeup.HalfLength)
	if w.spec.Method != flavor.Blend && !w.spec.Together && cloudy > 0 {
		never := neverShaken
		if by.Class == flavor.ClassSparklingWine {
			never = neverShakenWine
		}
		x *= makeup.Ramp(inside/w.total, by.MostTopped(), never)
	}
	w.say(Flat, by, x, 0, 1, fullMisstep)
}

// eggUnshaken tells whether raw egg or a foam is not beaten; a hot drink sets it.
func (w *workshop) eggUnshaken() {
	if w.spec.Method.Aerates() || w.spec.Service == flavor.Hot {
		return
	}
	amount, by := w.of(func(p *flavor.Pour) bool { return foamy(p) && !p.After })
	w.say(EggUnshaken, by, makeup.Presence(amount, w.total, makeup.HalfLiquid), 0, 1, ruinMisstep)
}

// unshaken tells whether citrus or cream is only stirred. Proven drinks stir up to
// 0.18 of lemon juice; what is long gets its stir in the glass.
func (w *workshop) unshaken() {
	if w.spec.Method != flavor.Stir || w.spec.Service == flavor.Long || w.spec.Service == flavor.Hot {
		return
	}
	sour, by := w.of(sharp)
	if fizz, _ := w.of(bubbly); fizz == 0 {
		juice, most := w.of(func(p *flavor.Pour) bool {
			return p.Profile.Class.Kin() == flavor.KinJuice && p.Profile.Acid.Value >= sharpJuiceGPerL
		})
		sour += juice / 2
		if by == nil {
			by = most
		}
	}
	water, _ := w.of(func(p *flavor.Pour) bool { return p.Profile.Class.Free() }) // a splash of it mends nothing
	w.say(Unshaken, by, sour/(w.total-water), 0.13, 0.21, slightMisstep)
	if w.spec.Service == flavor.Up {
		for _, is := range []func(*flavor.Pour) bool{rich, brewedDark} {
			amount, by := w.of(is)
			w.say(Unshaken, by, amount/w.total, 0.05, 0.25, slightMisstep)
		}
	}
}

// sharpJuiceGPerL is the acid from which a juice wants shaking as citrus does.
const sharpJuiceGPerL = 7.0

// The share of the lesser of spirit and vermouth, of a drink, from which it is neither as it
// is, to where it surely is a martini or a manhattan, which is served cold. Common practice,
// no source.
const leastBeside, someBeside = 0.05, 0.13

// uniced tells whether a sour, spirit that is served up, or spirit with vermouth however it
// is served, is built where there is no ice, so that it is neither cold nor thinned. Water
// among the pours thins it beforehand, as in a batch for the freezer. Spirit with liqueur or
// bitters has its drinks at room temperature.
func (w *workshop) uniced() {
	if w.spec.Method != flavor.Build || w.spec.Service != flavor.Up && w.spec.Service != flavor.Neat {
		return
	}
	fizz, _ := w.of(bubbly)
	still := fullMisstep * (1 - makeup.Certainty(fizz, w.total, makeup.HalfLength))
	sour, by := w.of(sharp)
	w.say(Uniced, by, sour/w.total, 0.08, 0.18, still)
	water, _ := w.of(func(p *flavor.Pour) bool { return p.Profile.Class.Free() })
	spirit, by := w.of(func(p *flavor.Pour) bool { return p.Profile.Base() })
	strong, mixed := spirit, 1.0
	if w.spec.Service == flavor.Neat {
		vermouth, _ := w.of(func(p *flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinWine && p.Profile.Class.Laced() })
		strong += vermouth // more of it makes the drink no colder
		mixed = makeup.Ramp(min(spirit, vermouth)/w.total, leastBeside, someBeside)
	}
	w.say(Uniced, by, strong/w.total-2*water/w.total, 0.2, 0.4, still*mixed)
}

// A hot pour in a closed tin begins to be a danger at warmTinC and is one at hotTinC, in
// °C of all that goes in. A shot of hot espresso among spirits does not reach it.
const warmTinC, hotTinC = 47.0, 55.0

// hotOnIce tells whether what is hot is shaken or blended, which bursts a closed tin
// or the lid of a jar, or stirred on ice, which it melts.
func (w *workshop) hotOnIce() {
	if !w.spec.Method.Aerates() && (w.spec.Method != flavor.Stir || w.spec.Service != flavor.Up) {
		return
	}
	_, by := w.of(func(p *flavor.Pour) bool {
		return !lateOn(p) && (p.Heat == flavor.HeatHot || w.spec.Service == flavor.Hot && mix.Heats(w.spec, p))
	})
	if by != nil {
		w.say(HotOnIce, by, mix.MixedC(w.spec, w.ml), warmTinC, hotTinC, dangerMisstep)
	}
}

// setFatGPerL is the fat from which a pour is butter or oil.
const setFatGPerL = 500.0

// fatSet tells whether butter or oil goes into a cold drink by more than drops.
func (w *workshop) fatSet() {
	if w.spec.Service == flavor.Hot || w.spec.Method == flavor.Blend {
		return
	}
	fat, by := w.of(func(p *flavor.Pour) bool { return p.Profile.Fat.Value >= setFatGPerL })
	w.say(FatSet, by, makeup.Presence(fat, w.total, makeup.HalfLiquid), 0.2, 0.7, ruinMisstep)
}

// WantsShaking reports whether there is a reason to shake a drink with an ingredient in
// it: it is cloudy, is crushed by the ice, or the shake lengthens it.
func WantsShaking(p *flavor.Profile) bool {
	return p.Class.Shaken() || p.Carbonated || p.Class.Mild() || p.Class.Part() == flavor.PartLength
}
