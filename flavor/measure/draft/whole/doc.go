// Package whole looks at a draft as a whole, when all its lines are read: whether it holds two
// versions of a drink, and whether its pours are as much as one drink has and its glass holds.
package whole
