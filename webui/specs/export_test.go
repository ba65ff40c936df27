package specs

// What the tests of this folder look at from outside.

var ActionWords = actionWords
var BatchPlaces = batchPlaces
