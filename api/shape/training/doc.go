// Package training says how training rounds, tastings and the card of a family look as JSON, and
// makes these answers, as package shape does for what is poured.
package training
