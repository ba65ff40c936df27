// Package behind declares the interfaces through which the pages use package service: a
// bar that scores and finds covers, the house with its menu and stock, and a trainer.
// Each request makes one visit, so that everything on a page shows the same state of the
// house.
package behind
