package specs

// What the tests of this folder look at from outside.

var DidOf = didOf
var BatchPlaces = batchPlaces
