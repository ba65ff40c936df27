// Package technique tells what is wrong with how a drink is made, and how else it may be
// made: raw egg that nobody shakes, cream that curdles, soda in the shaker.
package technique
