package terminal

import (
	"fmt"
	"io"
	"time"
)

// sayEvery is how often a waiting user sees a message.
const sayEvery = 2 * time.Second

// Saying prints at intervals what is being done and for how long, until stop is called.
// It prints nothing before the first interval has passed.
func Saying(to io.Writer, what string) (stop func()) {
	begun := time.Now()
	over, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		defer func() { _ = recover() }() // an error in printing must not end the work
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
