// Package gap knows what left a drink, and what a bottle that is to stand there must earn,
// however much of it is poured in the end.
package gap
