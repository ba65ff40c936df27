// Package pace decides how hard the next round of training is and when a skill is due again:
// a weighted staircase, and the schedule that Wozniak published in 1990.
package pace
