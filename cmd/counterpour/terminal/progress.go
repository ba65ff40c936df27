package terminal

import (
	"fmt"
	"io"
	"time"
)

// sayEvery is how often somebody who waits is told that work goes on.
const sayEvery = 2 * time.Second

// Saying says again and again what is being done and for how long, until it is told to
// stop; nothing of what is done before the first time is due.
func Saying(to io.Writer, what string) (stop func()) {
	begun := time.Now()
	over, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		defer func() { _ = recover() }() // who only tells must not end the work
		for beat := time.NewTicker(sayEvery); ; {
			select {
			case <-over:
				beat.Stop()
				return
			case <-beat.C:
				fmt.Fprintf(to, "%s, %.0f s so far\n", Legible(what), time.Since(begun).Seconds())
			}
		}
	}()
	return func() { close(over); <-ended }
}
