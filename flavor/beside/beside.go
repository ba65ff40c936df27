// Package beside runs functions in goroutines and returns their panics as errors.
package beside

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
)

// Run starts f in a goroutine. wait blocks until f has returned, and returns its error,
// or its panic as an error.
func Run(f func() error) (wait func() error) {
	ended := make(chan error, 1)
	go func() { ended <- safely(f) }()
	return sync.OnceValue(func() error { return <-ended })
}

// Each calls f with 0 to n-1, on several goroutines. It returns the error of the smallest
// failing number, or nil. After an error, a goroutine skips the rest of its numbers.
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
