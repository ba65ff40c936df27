// Package house is what a bar knows of itself, kept so that nothing is lost:
// its bottles with what was measured in them, the syrups and infusions it
// makes, its specs, what has run out, the covers it served and how they were
// received, training results, and the specs its people hold to be right.
//
// # Words
//
// A record is one of those things, an [Item] under a [Ref]: a kind and an id.
// A venue is one bar. Every write is a list of edits by an actor at a time; it
// is done as a whole or not at all, and returns once it is on disk. A change is
// one line of the audit log: who, when, which record, which version, and the
// record as it then was. Specs and everything else have as many versions as
// changes; [Store.History] gives them all.
//
// # Invariants
//
//   - The log only grows. A removal marks a record as gone; its history stays.
//     Undo is a change like any other, so it can be undone in turn.
//   - Changes of a venue are numbered 1, 2, 3 … without gaps, in the order in
//     which they became durable, and each carries a seal over its content.
//   - A record is the last change of its ref. [Store.Check] holds both together.
//   - A write names the version it was made on, 0 for a new record. If the
//     record has moved on, the write fails with [ErrConflict].
//   - What a record points to exists, though it may be gone.
//   - Values handed in or out share no memory with the store.
//   - Every list has a total order: kind and id, version, or number of change.
//
// # Neighbours
//
// Folder store keeps houses, in SQLite and in PostgreSQL; everybody else sees
// [Store]. The catalogue is never written to: [Overlay] lays the house over it. Folder
// exchange reads and writes CSV, JSON, Recipe documents and text; folder prep
// works out costs and batches. The package keeps no state of its own: the
// clock and the actor are arguments.
package house
