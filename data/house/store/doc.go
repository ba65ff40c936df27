// Package store keeps houses: each is a [house.Store] in an SQLite file, in memory
// or in a PostgreSQL database.
//
// [Open] keeps one venue in an SQLite file: WAL, synchronous FULL, foreign keys
// on, one writer, and a lock held for as long as the store is open, so that a
// second process is told. [OpenPostgres] keeps many venues in one PostgreSQL
// database for several servers; writes of a venue queue on its row. Both tell
// of changes: Subscribe. What a record points to is held to exist by foreign
// keys.
//
// The lock and the log survive the end of the process at any moment. What
// survives a power cut is what the disk truly wrote when it said so.
package store
