package access

import (
	"context"
	"fmt"
	"time"
)

// Keep keeps the guard up, until ctx ends, with what happens elsewhere: with the
// file of its book, which is read again when it has changed, and with sessions that
// other servers of the house began, used or ended. A file that cannot be used leaves
// the book as it was, and the log says so. It takes a few seconds to notice.
func (g *Guard) Keep(ctx context.Context, path string) {
	t := time.NewTicker(beat)
	defer t.Stop()
	file := following{path: path, book: g.book.Load()}
	failing := false
	for {
		select {
		case <-ctx.Done():
			return
		case <-t.C:
		}
		g.reread(&file)
		err := safely(func() error { return g.sessions.keep(ctx, g.now()) })
		switch {
		case ctx.Err() != nil:
			return
		case err != nil && !failing:
			g.opts.Log.Error("sessions cannot be kept up with; who signs out elsewhere is let in here until they can", "err", err)
		case err == nil && failing:
			g.opts.Log.Info("sessions are kept up with again")
		}
		failing = err != nil
	}
}

// following is a file of a book as it was read last.
type following struct {
	path    string
	book    *Book
	trouble string // what was wrong with it when it was read last
}

// reread takes the book up that is in the file now.
func (g *Guard) reread(f *following) {
	var b *Book
	err := safely(func() (err error) { b, err = ReadFile(f.path); return err })
	if err != nil {
		if err.Error() != f.trouble {
			g.opts.Log.Error("the file of passcodes cannot be used; the people in it before are let in on", "err", err)
		}
		f.trouble = err.Error()
		return
	}
	f.trouble = ""
	if b.text == f.book.text {
		return
	}
	f.book = b
	g.use(b)
	g.opts.Log.Info("the file of passcodes has changed", "people", len(b.people), "scripts", len(b.bearers))
}

// safely turns a panic into an error: the program goes on without the guard's upkeep
// rather than not at all.
func safely(f func() error) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			err = fmt.Errorf("access: broke: %v", cause)
		}
	}()
	return f()
}
