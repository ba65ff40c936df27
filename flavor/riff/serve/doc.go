// Package serve tells how the trade mixes and serves what a drink holds, and where a
// drink departs from that.
package serve
