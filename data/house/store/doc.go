// Package store implements [house.Store] on an SQLite file, in memory and on a PostgreSQL
// database.
//
// [Open] stores one venue in an SQLite file: WAL, synchronous FULL, foreign keys on, one
// writer. A lock on the file is held while the store is open, so that a second process
// gets an error. [OpenPostgres] stores many venues in one PostgreSQL database, for
// several servers; writes of a venue are serialised by a lock on its row. Both notify
// subscribers of changes. Foreign keys enforce that the records a record refers to exist.
//
// Acknowledged writes survive the end of the process at any moment. They survive a power
// cut if the disk really wrote what it acknowledged.
package store
