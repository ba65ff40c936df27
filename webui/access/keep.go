package access

import (
	"context"
	"fmt"
	"time"
)

// Keep updates the guard until ctx ends: it reads the file of the roster when that changes,
// and takes over sessions that other servers began, used or ended. Both take a few
// seconds. A file with errors leaves the roster as it was and is logged.
func (g *Guard) Keep(ctx context.Context, path string) {
	t := time.NewTicker(beat)
	defer t.Stop()
	file := following{path: path, roster: g.roster.Load()}
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
			g.opts.Log.Error("sign-outs on other servers cannot be read; whoever signed out there is still let in here", "err", err)
		case err == nil && failing:
			g.opts.Log.Info("sign-outs on other servers are read again")
		}
		failing = err != nil
	}
}

// following is the state of the roster's file when it was last read.
type following struct {
	path    string
	roster  *Roster
	trouble string // the error of the last read
}

// reread replaces the roster if its file has changed.
func (g *Guard) reread(f *following) {
	var b *Roster
	err := safely(func() (err error) { b, err = ReadFile(f.path); return err })
	if err != nil {
		if err.Error() != f.trouble {
			g.opts.Log.Error("the file of passcodes cannot be used; the people whom it listed before are still let in", "err", err)
		}
		f.trouble = err.Error()
		return
	}
	f.trouble = ""
	if b.text == f.roster.text {
		return
	}
	f.roster = b
	g.use(b)
	g.opts.Log.Info("the file of passcodes has changed", "people", len(b.people), "scripts", len(b.bearers))
}

// safely turns a panic into an error, so that a failure of the upkeep does not end the
// program.
func safely(f func() error) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			err = fmt.Errorf("access: broke: %v", cause)
		}
	}()
	return f()
}
