// Package mix works out what is in the glass: pours become grams of ethanol,
// water, sugars and acids, ice adds its water and takes the heat, and the
// finished drink has a volume, a strength, a temperature and a plus-or-minus.
//
// A drink is a mass balance, not a sum of volumes, so mixing contracts as it
// does in life. Ethanol and water follow OIML R 22; dissolved solids take the
// apparent volume of sucrose in water at the same share (ICUMSA SPS-4). That
// the two do not disturb each other is an approximation: it is within 0.5 % of
// volume for drinks below 45 % vol.
package mix
