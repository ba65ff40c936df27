package flavor

// Unit is a unit of the bar.
type Unit string

// The units of the bar.
const (
	Ounce      Unit = "oz"
	Millilitre Unit = "ml"
	Centilitre Unit = "cl"
	Dash       Unit = "dash"
	Drop       Unit = "drop"
	Barspoon   Unit = "barspoon"
	Teaspoon   Unit = "tsp"
	Tablespoon Unit = "tbsp"
	PartUnit   Unit = "part"
	Splash     Unit = "splash"
	Pinch      Unit = "pinch"
	Gram       Unit = "g"
	Sprig      Unit = "sprig"
	Leaf       Unit = "leaf"
	Slice      Unit = "slice"
	Wedge      Unit = "wedge"
	Piece      Unit = "piece"
	Cube       Unit = "cube"
	Top        Unit = "top"
	Float      Unit = "float"  // laid on the finished drink
	Rinse      Unit = "rinse"  // what clings to a glass that is swirled and emptied
	Spritz     Unit = "spritz" // one press of an atomiser
	Scoop      Unit = "scoop"  // of ice cream or sorbet
)

// unitTraits are what is true of a unit.
type unitTraits uint8

const (
	jigger   unitTraits = 1 << iota // read off a jigger
	spoon                           // a spoon's worth
	few                             // poured where a jigger is too coarse
	counted                         // a number of things
	decimals                        // written in decimals, not in fractions
	yielding                        // a profile may say how much of it one unit gives
)

// unitInfo is one row of the table of units. The hand is the standard deviation
// of one pour as a share of it, common practice, no source; zero stands for a
// jigger, which errs by a little of the size and a little of the amount.
type unitInfo struct {
	unit   Unit
	hand   float64
	traits unitTraits
}

var units = []unitInfo{
	{Ounce, 0, jigger},
	{Millilitre, 0, jigger | decimals},
	{Centilitre, 0, jigger | decimals},
	{Dash, 0.25, few | yielding},
	{Drop, 0.25, few},
	{Barspoon, 0.15, spoon | few},
	{Teaspoon, 0, spoon | few},
	{Tablespoon, 0, spoon},
	{PartUnit, 0, 0},
	{Splash, 0.25, 0},
	{Pinch, 0.25, yielding},
	{Gram, 0.03, decimals},
	{Sprig, 0.25, counted | yielding},
	{Leaf, 0.25, counted | yielding},
	{Slice, 0.25, counted | yielding},
	{Wedge, 0.25, counted | yielding},
	{Piece, 0.25, counted | yielding},
	{Cube, 0.03, counted | yielding},
	{Top, 0.15, 0},
	{Float, 0.25, 0},
	{Rinse, 0.25, few},
	{Spritz, 0.25, few},
	{Scoop, 0.25, 0},
}

// Units lists every unit, volumes first.
func Units() []Unit {
	out := make([]Unit, len(units))
	for i := range units {
		out[i] = units[i].unit
	}
	return out
}

func (u Unit) info() (unitInfo, bool) {
	for _, i := range units {
		if i.unit == u {
			return i, true
		}
	}
	return unitInfo{}, false
}

func (u Unit) is(t unitTraits) bool { i, _ := u.info(); return i.traits&t != 0 }

// Valid reports whether u is one of [Units].
func (u Unit) Valid() bool { _, ok := u.info(); return ok }

// Jigger reports whether the unit is read off a jigger.
func (u Unit) Jigger() bool { return u.is(jigger) }

// Spoon reports whether the unit is a spoon's worth.
func (u Unit) Spoon() bool { return u.is(spoon) }

// Small reports whether the unit is poured where a jigger is too coarse: a
// dash, a drop, a bar spoon or a teaspoon.
func (u Unit) Small() bool { return u.is(few) }

// Counted reports whether the unit is a number of things.
func (u Unit) Counted() bool { return u.is(counted) }

// Decimal reports whether amounts of the unit are written in decimals, others
// being written in fractions.
func (u Unit) Decimal() bool { return u.is(decimals) }

// After reports whether what is poured by the unit goes in, or on, once the rest
// is mixed: a top, a float, a rinse, a spray.
func (u Unit) After() bool { return u == Top || u == Float || u == Rinse || u == Spritz }

// Yields reports whether a profile may say how much of it one unit gives.
func (u Unit) Yields() bool { return u.is(yielding) }

// HandSpread returns the standard deviation of one pour as a hand makes it, as a
// share of the pour. It is false for what is measured in a jigger or by volume,
// which errs by an amount and not only by a share.
func (u Unit) HandSpread() (float64, bool) {
	i, ok := u.info()
	return i.hand, ok && i.hand > 0
}
