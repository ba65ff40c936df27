// Package training is the pages for training a palate and a team: rounds and what
// they say of a learner, tasting flights, triangle tests, and the card for a new
// starter.
//
// A round travels in its form as the request that it is made from again, sealed,
// since the request gives the answer away. Who gave a name has their results in the
// house, of which their state is made again; a learner without one is a cookie that
// holds a random word, goes with the browser, and is remembered until the program
// stops.
package training
