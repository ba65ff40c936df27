package naming

import "counterpour/flavor"

// liqueurs are what bars call by the fruit alone too, where a drink is sour and nothing else
// sweetens it: common practice, no source.
var liqueurs = map[string]string{"orange": "triple sec", "pear": "pear liqueur"}

// Liqueur is the liqueur that the name of a fruit alone may mean; empty if there is none.
func Liqueur(name string) string { return liqueurs[flavor.NormaliseName(name)] }
