// Package behind declares what the pages ask of the centre (api/service) at one
// visit: a bar that scores and covers, the house with its menu and stock, and a
// trainer. Each request makes one visit, so that all of a page speaks of the house
// at one moment.
package behind
