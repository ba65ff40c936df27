// Package counting tells which unit a number without one has: what it counts, such as eggs or leaves,
// or else what the other lines are poured in. Where nothing tells, it asks.
package counting
