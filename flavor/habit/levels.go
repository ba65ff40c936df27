package habit

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
)

// Levels that are looked at: the aroma families, then what tongue and mouth
// tell. All are what the parts bring, over the volume before ice.
const (
	Salty  Level = Level(flavor.NumAromaFamilies) + iota // g/L of salt
	Bitter                                               // mg/L of quinine
	Fat                                                  // g/L
	Body                                                 // g/L of what thickens
	Acid                                                 // g/L
	Sugar                                                // g/L

	// NumLevels is how many there are.
	NumLevels = int(Sugar) + 1
)

// Smell reports whether the level is one of aroma, but for what bites.
func (l Level) Smell() bool {
	return int(l) < flavor.NumAromaFamilies && flavor.AromaFamily(l) != flavor.Pungent
}

// Level is a sense, or one family of aromas, whatever brings it.
type Level int

// String returns what a taster calls it.
func (l Level) String() string {
	switch l {
	case Salty:
		return "salt"
	case Bitter:
		return "bitterness"
	case Fat:
		return "fat"
	case Body:
		return "thickness"
	case Acid:
		return "acid"
	case Sugar:
		return "sugar"
	}
	return flavor.AromaFamily(l).String()
}

// Unit returns what it is measured in, before ice.
func (l Level) Unit() string {
	switch l {
	case Salty, Fat, Body, Acid, Sugar:
		return "g/L"
	case Bitter:
		return "mg/L of quinine"
	}
	return "of aroma"
}

// Floor keeps amounts that nobody notices from counting as much: about the
// detection threshold over the Weber fraction, as the sense package has them. Two
// amounts are compared by the logarithms of what they are above it.
func (l Level) Floor() float64 {
	switch l {
	case Salty:
		return 4
	case Bitter:
		return 9
	case Fat, Body, Sugar:
		return 10
	case Acid:
		return 1
	}
	return 0.4
}

// PerML returns what a level gets from an ingredient, so that levels mix by
// volume.
func (l Level) PerML(p *flavor.Profile) float64 {
	switch l {
	case Salty:
		return p.Salt.Value
	case Bitter:
		return p.Bitter.Value
	case Fat:
		return p.Fat.Value
	case Body:
		return p.Texture.Value
	case Acid:
		return p.Acid.Value
	case Sugar:
		return p.Sugar.Value
	}
	return p.Aroma[l]
}

func (b *Book) addLevels(levels *[NumLevels][]sample, drink int, parts []Part) {
	for l := range levels {
		var sum float64
		for _, p := range parts {
			x := p.Share * Level(l).PerML(p.Profile)
			if Level(l).Smell() {
				x *= 1 - p.Smells
			}
			sum += x
		}
		x := sampleOf(sum+Level(l).Floor(), drink, Level(l).rules().reach)
		levels[l] = append(levels[l], x)
		b.byDrink[l] = append(b.byDrink[l], x.at)
		b.sums[l] += x.at
	}
}

func (b *Book) sortLevels(levels *[NumLevels][]sample) {
	for l, samples := range levels {
		sortSamples(samples)
		b.levels[l] = columnsOf(samples)
		b.high[l] = math.Inf(1)
		if n := len(samples); n > 0 {
			b.high[l] = math.Exp(samples[int(float64(n)*Level(l).rules().neverHigh)].at) - Level(l).Floor()
		}
	}
}

// OfRatio reports whether the ratio tells of the level too, so that it differs from one
// kind of drink to another: what is much sugar for a dry drink is little for a sour.
func (l Level) OfRatio() bool { return l == Acid || l == Sugar }

// rules say how a level is judged. A share neverHigh of all proven drinks carries less
// of it than what may be too much. A share rare of good drinks may carry more than the
// most. Good drinks go beyond a known one by a factor whose logarithm is reach. A proven
// drink that is made of quite other things has the weight other. All drinks carry some
// of every level, so one alone counts for less than it does for a pour; what the ratio
// tells of is held to its own kind nearly alone, and closely. Chosen by leaving out each
// proven drink in turn.
type rules struct{ neverHigh, rare, reach, other float64 }

func (l Level) rules() rules {
	switch {
	case l.OfRatio():
		return rules{neverHigh: 0.1, rare: 0.025, reach: 0.12, other: 0.0003}
	case l.smothers() || l == Level(flavor.Floral):
		return rules{neverHigh: 0.75, rare: 0.03, reach: closeReach, other: 0.01}
	}
	return rules{neverHigh: 0.75, rare: 0.025, reach: closeReach, other: 0.01}
}

// smothers reports whether a level is of a smell that leaves no room for others.
func (l Level) smothers() bool {
	return l == Level(flavor.Smoke) || l == Level(flavor.Anise) || l == Level(flavor.Clove)
}

// Bound is what good drinks carry of a level.
type Bound struct {
	Usual, Most float64
}

// NeverHigh returns the amount of a level up to which a drink has no more of it than most
// proven drinks carry, whatever they are made of: that is never too much. It is +Inf if
// there are no proven drinks.
func (b *Book) NeverHigh(l Level) float64 { return b.high[l] }

// Bound returns what good drinks carry of a level; near is as for [Book.Limits].
// It allows anything if there are no proven drinks.
func (b *Book) Bound(l Level, near []float64) Bound {
	samples, floor := &b.levels[l], l.Floor()
	n := len(samples.at)
	if n == 0 {
		return Bound{Usual: math.Inf(1), Most: math.Inf(1)}
	}
	rules := l.rules()
	numbers := b.rooms.take(2 * n)
	defer b.rooms.put(numbers)
	room := *numbers
	weights := room[:n]
	for i, drink := range samples.drink {
		weights[i] = rules.other + near[drink]
	}
	t := tailOf(weights, samples.at)
	most := math.Exp(t.most(samples.lift, rules.rare, rules.reach, room[n:])) - floor
	if l.Smell() {
		most = math.Max(most, l.leastAccent())
	}
	return Bound{Usual: math.Min(most, math.Exp(t.middle/t.total)-floor), Most: most}
}

// Middle returns the logarithm of the amount of a level, floor and all, in the middle
// of good drinks, as [Book.Bound] takes it before it looks for the most. It is quick;
// total is the sum of near.
func (b *Book) Middle(l Level, near []float64, total float64) float64 {
	other := l.rules().other
	return (floats.Dot(near, b.byDrink[l]) + other*b.sums[l]) / (total + other*float64(len(near)))
}

// MostReaches reports whether the logarithm of the most that good drinks carry of a
// level, floor and all, is y or more. It is quicker than to find the most; total is the
// sum of near.
func (b *Book) MostReaches(l Level, near []float64, total, y float64) bool {
	if l.Smell() && y <= math.Log(l.leastAccent()+l.Floor()) {
		return true
	}
	rules, samples := l.rules(), &b.levels[l]
	enough := rules.rare * (total + rules.other*float64(len(near)))
	lift, above := math.Exp(y/rules.reach), 0.0
	for i := len(samples.at) - 1; i >= 0 && above < enough; i-- {
		above += (rules.other + near[samples.drink[i]]) * min(1, samples.lift[i]/lift)
	}
	return above >= enough
}

// leastAccent returns the intensity of a smell that is never too much, whatever
// drinks carry: what three quarters of an ounce of a neat, full-flavoured bottle lends
// to three ounces. Of what smothers other smells it is not much more than half as much.
// Flowers lie between: much of them tastes of soap. Judged; that of flowers was held
// against the proven drinks.
func (l Level) leastAccent() float64 {
	switch {
	case l.smothers():
		return 1.5
	case l == Level(flavor.Floral):
		return 1.9
	}
	return 2.5
}
