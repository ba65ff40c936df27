// Package beside runs work on other cores beside the caller's, and makes an error of a
// panic there, which nobody else would catch.
package beside

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
)

// Run starts f and returns what waits for its end and returns its error.
func Run(f func() error) (wait func() error) {
	ended := make(chan error, 1)
	go func() { ended <- safely(f) }()
	return sync.OnceValue(func() error { return <-ended })
}

// Each calls f with 0 to n-1, in order on each core and on several at once, and
// returns the error of the smallest number that failed, nil if none did. After an error
// the numbers of the same core that follow are left out.
func Each(n int, f func(i int) error) error {
	cores := max(1, min(n, runtime.GOMAXPROCS(0)))
	waits := make([]func() error, cores)
	for c := range cores {
		waits[c] = Run(func() error {
			for i := c * n / cores; i < (c+1)*n/cores; i++ {
				if err := f(i); err != nil {
					return err
				}
			}
			return nil
		})
	}
	var first error
	for _, wait := range waits {
		if err := wait(); first == nil {
			first = err
		}
	}
	return first
}

func safely(f func() error) (err error) {
	defer func() {
		if spilled := recover(); spilled != nil {
			err = fmt.Errorf("it panicked: %v\n%s", spilled, debug.Stack())
		}
	}()
	return f()
}
