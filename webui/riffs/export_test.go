package riffs

// What the tests of this folder look at from outside.

var Strengths = strengths
var WishPairs = wishPairs
