// Package technique tells what is wrong with how a drink is made: raw egg that
// nobody shakes, cream that curdles, soda in the shaker.
package technique
