// Package coaching runs a house's training: it chooses a learner's next round, records
// the progress of each learner, and lays out triangle tests and pours both their sides.
package coaching
