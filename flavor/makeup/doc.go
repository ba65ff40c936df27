// Package makeup reads what a drink is made of, hardly how much of it: its
// ingredients, the signals that tell families apart, and how near of kin two drinks
// are.
package makeup
