package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
)

// roomToStart is how much is laid out before garbage is looked for, in bytes: a start
// makes a hundred megabytes that it keeps or will be gone with the process, and to look
// for garbage among them takes a quarter of its time.
const roomToStart = 160 << 20

// collectLater leaves garbage where it is until the heap has grown to roomToStart, and
// from then on lets Go collect as it does usually. Who sets GOGC or GOMEMLIMIT has it
// their way.
func collectLater() {
	if os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	percent := debug.SetGCPercent(-1)
	debug.SetMemoryLimit(roomToStart)
	runtime.SetFinalizer(new(firstCollection), func(*firstCollection) {
		debug.SetMemoryLimit(math.MaxInt64)
		debug.SetGCPercent(percent)
	})
}

// firstCollection is garbage from the beginning, so that the first collection finds it.
type firstCollection struct{ _ [16]byte }
