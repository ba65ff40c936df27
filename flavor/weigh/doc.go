// Package weigh holds a drink against the families and against what proven drinks
// carry: its score, and what may be wrong with it.
//
// The score by the ratio is the mean over the families, weighted by how surely the drink
// belongs to each, which is read from what is in it, hardly from its amounts. Habits,
// proportions, bounds of the glass and the method may leave less of it.
//
// What is wrong is weighed, not measured: a ratio cannot tell too much of one part from too
// little of the others, so for every axis the package asks how probable it is that this axis
// alone slipped in an otherwise good drink of its make-up (see Pull). Detail lays the
// arithmetic of a score open, and WithPalate moves the centres to the taste of a house.
package weigh
