package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
)

// The heap size in bytes at which the first garbage collection runs. A command allocates
// about a hundred megabytes and ends; collecting garbage would take a tenth of its time. A
// server allocates some seventy before it first answers. Collecting as usual would take a
// quarter of that time, and not at all leaves it several megabytes larger at rest, since what
// it keeps lies scattered.
const (
	roomToStart = 160 << 20
	roomToServe = 40 << 20
)

// collectLater delays garbage collection until the heap has what a start needs; then Go
// collects as usual. If GOGC or GOMEMLIMIT is set, collectLater does nothing.
func collectLater(args []string) {
	if collectsAsTold() {
		return
	}
	room := int64(roomToStart)
	if slices.Contains(args, "serve") {
		room = roomToServe
	}
	percent := debug.SetGCPercent(-1)
	debug.SetMemoryLimit(room)
	runtime.SetFinalizer(new(firstCollection), func(*firstCollection) {
		debug.SetMemoryLimit(math.MaxInt64)
		debug.SetGCPercent(percent)
	})
}

// firstCollection is garbage from the start; its finalizer runs at the first collection.
type firstCollection struct{ _ [16]byte }

// servingPercent is how much a server allocates anew before it collects garbage, in percent
// of what it keeps. That is some 25 MB, so that twice the usual percentage costs as much,
// and spares half of the collecting, which else takes a sixth of a score.
const servingPercent = 200

// settle gives back the memory that a start took, and has a server collect garbage more
// seldom from now on, unless GOGC or GOMEMLIMIT is set.
func settle() {
	// The start leaves several times more garbage than live memory. Some of it is in
	// pools, which only the second collection empties.
	runtime.GC()
	debug.FreeOSMemory()
	if !collectsAsTold() {
		debug.SetGCPercent(servingPercent)
	}
}

// collectsAsTold reports whether the environment says when garbage is collected.
func collectsAsTold() bool { return os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" }
