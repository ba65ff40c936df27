// Package onedrink tells of a draft, when all its lines are read, whether it is one drink that can be
// poured: no two versions of it, no more than its glass holds or one drink has, and no amount that is
// a range.
package onedrink
