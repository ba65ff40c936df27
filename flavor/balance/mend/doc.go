// Package mend looks for the smallest change that balances a draft.
//
// A search goes from what the faults ask for (asked.go, making.go, size.go, exchange.go) to other
// pours (unasked.go), to what is left out (leaving.go), to two pours (together.go) and to what is
// added (adding.go), until something balances the draft. What is found is a candidate
// (candidate.go) unless a limit forbids it (limit.go); the best of them are the fixes (fix.go).
package mend
