// Package mix works out what is in the glass: pours become grams of ethanol,
// water, sugars and acids, ice adds its water and takes the heat, and the
// finished drink has a volume, a strength, a temperature and a plus-or-minus.
//
// A drink is a mass balance, not a sum of volumes, so mixing contracts as it
// does in life. Ethanol and water follow OIML R 22; dissolved solids take the
// apparent volume of sucrose in water at the same share (ICUMSA SPS-4). That
// the two do not disturb each other is an approximation. Dissolved sucrose
// takes 0.615 to 0.635 mL/g at any share, so even in a liqueur of 300 g/L the
// volume cannot be out by more than 0.6 % on that account.
//
// How much ice melts comes from published equations for shaking and stirring,
// scaled for the other methods; an energy balance stands beside them. The
// balance says how cold the drink gets, what other [Ice], a warmer bar, a hot pour or
// a heavier vessel change, and how far to trust the equations: see
// [Mixer.Balance]. Ice that stands in the glass is heat alone: it brings what is
// poured on it, tops too, to within a few degrees above 0 °C.
//
// Around the drink stand the sums of prep: [MakeSyrup], [AdjustAcid],
// [Dilute], [Mixer.Batch], [StandardDrinks], [Glasses] and [Keeping].
//
// Words: a pour "meets the ice" unless it is carbonated or a top, which go in
// after it. Strength is % vol at 20 °C. Volumes are mL at 20 °C and masses are
// grams unless a name says otherwise. Arguments are never changed. What a user
// may have written wrongly comes back as a [flavor.DataFault] of kind
// [flavor.ErrInvalid]; nothing panics.
//
// It does not model pressure, foam, the aroma that ice shuts in, or a drink
// that waits in its glass: every number is for the moment of serving.
package mix
