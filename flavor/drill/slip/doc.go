// Package slip says what a hand pours wrong: the amounts that it takes for each other, what
// it forgets, and what nobody pours even by mistake.
package slip
