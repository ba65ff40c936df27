package stock

// What the tests of this folder look at from outside.

const MaxChanges = maxChanges
