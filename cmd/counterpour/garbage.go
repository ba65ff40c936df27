package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
)

// roomToStart is how much is laid out before garbage is looked for, in bytes: a command
// lays out a hundred megabytes that are gone when it ends, and to look for garbage among
// them takes a tenth of its time.
const roomToStart = 160 << 20

// collectLater is for commands that end soon; a server starts once, and its memory is
// wanted for other things. It leaves garbage where it is until the heap has grown to roomToStart, and
// from then on lets Go collect as it does usually. Who sets GOGC or GOMEMLIMIT has it
// their way.
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

// firstCollection is garbage from the beginning, so that the first collection finds it.
type firstCollection struct{ _ [16]byte }
