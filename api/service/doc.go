// Package service is the application layer: everything that can be asked of a house,
// without HTTP.
//
// # Words
//
// A [kitchen.Kitchen] joins the catalogue, the index and the science. A [Venue] is a
// running house. It reads the house's store and derives a [Snapshot] from it: the kitchen
// with the house's bottles and makings in place of the catalogue's; the menu; the stock
// and what of it has run out; the palate, from the drinks marked as right; what was
// learnt from tasted covers; prices per millilitre. When the store changes, by this
// server or by another that shares it, the venue derives the next snapshot. A snapshot is
// immutable. A request of the API uses one snapshot to its end. A [Visit] serves a
// request for a page: it switches to the latest snapshot after each of its own writes.
//
// Everything here is derived from the store and held in memory, so nothing needs repair
// after a crash: the next start reads the store again. The part of the index that depends
// on the house carries the [records.Version] of the bottles and makings from which it was
// made.
package service
