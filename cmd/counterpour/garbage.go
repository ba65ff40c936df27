package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
)

// roomToStart is the heap size in bytes at which the first garbage collection runs. A
// command allocates about a hundred megabytes and ends; collecting garbage would take a
// tenth of its time.
const roomToStart = 160 << 20

// collectLater delays garbage collection in short-lived commands, but not in a server,
// whose memory use matters more than its start. Once the heap reaches roomToStart, Go
// collects as usual. If GOGC or GOMEMLIMIT is set, collectLater does nothing.
func collectLater(args []string) {
	if slices.Contains(args, "serve") || os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	percent := debug.SetGCPercent(-1)
	debug.SetMemoryLimit(roomToStart)
	runtime.SetFinalizer(new(firstCollection), func(*firstCollection) {
		debug.SetMemoryLimit(math.MaxInt64)
		debug.SetGCPercent(percent)
	})
}

// firstCollection is garbage from the start; its finalizer runs at the first collection.
type firstCollection struct{ _ [16]byte }
