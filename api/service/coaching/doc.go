// Package coaching is what a house's training is made of: the next round for a learner,
// how far each of those who learn has come, and triangle tests as they are laid out.
package coaching
