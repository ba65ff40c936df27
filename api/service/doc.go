// Package service is the centre of the program: a house at work, and everything
// that can be asked of it, without HTTP.
//
// # Words
//
// A [kitchen.Kitchen] joins the catalogue, the index and the science. A [Venue] is a
// house at work: it reads the house's store and makes the [Snapshot] that goes
// with it: the kitchen with the house's bottles and makings laid over the
// catalogue; the menu; the stock and what of it has run out; the palate, from
// the drinks marked as right; what was learnt of covers; what a millilitre
// costs. When the store changes, here or at another server that shares it, the
// venue makes the next snapshot. A snapshot is never changed: whoever holds one
// goes on with what it was. A request reads one, once; a [Visit] does so for a
// page, and reads the next one after each write of its own.
//
// Everything here is derived from the store and kept in memory, so a program
// that stops between a write and its effect has nothing to fix: the next start
// reads the store. The part of the index that the house decides carries the
// [records.Version] of the bottles and makings it was made from.
package service
