// Package flavor holds the words of the trade as types: a Profile says what is
// in a bottle, a Pour is an amount of it, and a Spec is a list of pours with a
// method and a service.
//
// Every number is a Figure: a value, the spread to expect around it, and where
// it comes from. Volumes are millilitres at 20 °C, masses grams, strengths per
// cent by volume at 20 °C, concentrations grams per litre of the ingredient.
// Bitterness is milligrams of quinine per litre that taste as bitter; aroma
// intensities are on the open linear scale described at [AromaFamilies]. Both are
// linear in volume: half the pour carries half.
//
// The package computes nothing about a finished drink. Its folders do: measure
// reads a spec, mix works out the drink, template knows the families of
// drinks, balance scores a drink and mends it, cover replaces an ingredient.
// Values are plain data; nothing here is changed after it is made.
package flavor
