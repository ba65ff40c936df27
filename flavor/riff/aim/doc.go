// Package aim tells how far a drink is from what was asked of it.
//
// [Limits] are what it must keep to: what a guest must not have, what a wish rules out, what
// must be poured, how strong and how dear it may be. An [Aim] is a wish for more or less of
// one thing in the glass, met by a step that people notice, see package sense. A
// [Comparison] tells of two drinks that were mixed how well the second meets the aims, and
// whether by what who says so means; [Ready] tells it of amounts, while they are still
// sought.
//
// Of ingredients an aim tells which lead toward it: by the table of what a bartender meets
// it with, see [wish.Carriers], or else by what has much of it.
package aim
