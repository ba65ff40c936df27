// Package wording holds every sentence of training: what a round asks, what is right and
// why something else is not, what a team is told of itself, and what a tasting says. It
// takes numbers and names, and knows no rule. What is wrong with a request is said where it
// is checked.
package wording
