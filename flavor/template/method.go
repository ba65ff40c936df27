package template

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// MethodFault is what can be wrong with how a drink is made.
type MethodFault string

// The faults of method: common practice, no source.
const (
	EggUnshaken MethodFault = "egg unshaken" // raw egg or a foam in what is not shaken
	Curdled     MethodFault = "curdled"      // milk with acid, or cream with acid that is not shaken
	Flat        MethodFault = "flat"         // what sparkles is shaken or blended
)

// MethodSlip is a fault of method.
type MethodSlip struct {
	Fault   MethodFault
	Profile *flavor.Profile // the pour that suffers
	Edges   float64         // as of the other reasons why a drink is not balanced
	Shake   bool            // shaking mends it
}

// fullSlip is the edges of a fault of method with plenty of the pour in question:
// such a drink is at best near.
const fullSlip = 1.6

// slipsOfMethod tells what is wrong with how the drink with other amounts is made.
func (b *Build) slipsOfMethod(ml []float64, tell func(MethodSlip)) {
	total := sum(ml)
	aerated, everything := b.aerated()
	for i := range b.spec.Pours {
		f, half := b.wrongly(i, aerated, everything)
		if f == "" {
			continue
		}
		// A pour in two parts is one pour.
		p, amount, told := b.spec.Pours[i].Profile, 0.0, false
		for j := range b.spec.Pours {
			if g, _ := b.wrongly(j, aerated, everything); g != f || b.spec.Pours[j].Profile != p {
				continue
			}
			told = told || j < i
			amount += ml[j]
		}
		if x := presence(amount, total, half); x > 0 && !told {
			tell(MethodSlip{Fault: f, Profile: p, Edges: fullSlip * x, Shake: f == EggUnshaken})
		}
	}
	b.curdles(ml, aerated, tell)
}

// wrongly tells what is wrong with how a pour is made, empty if nothing is, and the
// share of the drink at which that is half as grave.
func (b *Build) wrongly(i int, aerated, everything bool) (MethodFault, float64) {
	p := &b.spec.Pours[i]
	switch class := p.Profile.Class; {
	case (class == flavor.ClassEgg || class == flavor.ClassFoam) && !aerated && !p.After && b.spec.Service != flavor.Hot:
		return EggUnshaken, halfLiquid
	case p.Profile.Carbonated && everything && !p.After && p.Unit != flavor.Top:
		return Flat, halfLength
	}
	return "", 0
}

// aerated reports whether the method beats air into the drink, and whether it
// takes in what sparkles too: a blender takes everything, and so does a shaker if
// the spec says of other pours that they go in afterwards, or if there is nothing
// else in it that wants shaking. Without that a bartender reads "shake" as: all but
// the soda.
func (b *Build) aerated() (aerated, everything bool) {
	after, cloudy := false, false
	for i := range b.spec.Pours {
		p := &b.spec.Pours[i]
		after = after || p.After || p.Unit == flavor.Top
		cloudy = cloudy || p.Profile.Class.Shaken() && !mix.AfterIce(p)
	}
	switch b.spec.Method {
	case flavor.Blend:
		return true, true
	case flavor.Shake, flavor.DryShake:
		return true, after || !cloudy
	}
	return false, false
}

// Acid in milk and cream, g of citric acid to a litre of it: milk turns at pH 4.6,
// which takes some 4 g/L of citric acid and more of the acids of wine, and egg nogs on
// sherry and Madeira stand 5 g/L (from memory); cream has little casein to its fat and, once
// shaken, takes far more, as the fizz with cream and citrus shows.
const (
	milkAcid         = 8.0
	creamAcid        = 10.0
	shakenCreamAcid  = 60.0
	creamFatGPerL    = 150.0
	culturedGPerL    = 5.0   // acid from which milk is turned already
	preservedGPerL   = 300.0 // sugar from which it thickens and does not part
	leastProteinGPL  = 10.0  // protein below which nothing curdles
	curdlesFromShare = 0.5   // of those, from where it begins to cost
)

// curdles tells whether acid turns the milk or cream of a drink.
func (b *Build) curdles(ml []float64, aerated bool, tell func(MethodSlip)) {
	var acid, most, dairy float64 // g; the mL-weighted limit; mL
	var by *flavor.Profile
	var byML float64
	for i := range b.parts {
		p, v := b.parts[i].profile, b.parts[i].amount(ml)
		if !turns(p) {
			acid += v * b.parts[i].per[Sour] * LemonSour
			continue
		}
		limit := milkAcid
		if p.Class == flavor.ClassDairy && p.Fat.Value >= creamFatGPerL {
			if limit = creamAcid; aerated {
				limit = shakenCreamAcid
			}
		}
		most += v * limit / 1000
		dairy += v
		if v > byML {
			by, byML = p, v
		}
	}
	if dairy <= 0 || acid <= 0 {
		return
	}
	x := (acid/most - curdlesFromShare) / (1 - curdlesFromShare)
	if x <= 0 {
		return
	}
	tell(MethodSlip{Fault: Curdled, Profile: by, Edges: math.Min(x*x, fullSlip) * presence(dairy, sum(ml), halfLiquid),
		Shake: !aerated && by.Fat.Value >= creamFatGPerL})
}

// turns reports whether acid curdles an ingredient: milk, cream and cream
// liqueurs, but for what is cultured, or thick with sugar.
func turns(p *flavor.Profile) bool {
	if p.Class != flavor.ClassDairy && p.Class != flavor.ClassCreamLiqueur {
		return false
	}
	return p.Acid.Value < culturedGPerL && p.Sugar.Value < preservedGPerL && p.Texture.Value-p.Fat.Value >= leastProteinGPL
}
