package board

import (
	"errors"
	"net/http"
	"time"

	"counterpour/webui/access"
	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// How often the board is told that the line is open, and how long one message
// may take to be sent.
const (
	heartbeat = 5 * time.Second
	sendTime  = 10 * time.Second
)

// boardEvents streams the version of the outs, once at the start and again
// whenever they change, until the request or the house ends. A page that lost the line
// asks again by itself and is told the version anew, so it misses nothing. While the
// store of the house does not answer, the line says so once and is silent then:
// that the line is open must not pass for news.
func (p *pages) boardEvents(w http.ResponseWriter, r *http.Request) error {
	ctx := r.Context()
	leave, ok := p.lines.join(access.PersonOf(ctx))
	if !ok {
		return frame.ErrCrowded
	}
	defer leave()
	changes, err := p.house.Changes(ctx)
	if err != nil {
		return err
	}
	s := &stream{w: w, rc: http.NewResponseController(w)}
	if err := s.open(); err != nil {
		return err
	}
	beat := time.NewTicker(heartbeat)
	defer beat.Stop()
	stale := false
	if err = p.tell(r, s); err == nil {
		stale, err = p.stillStale(r, s, false)
	}
	for err == nil {
		select {
		case <-ctx.Done():
			return nil
		case _, open := <-changes:
			if !open {
				return nil
			}
			err = p.tell(r, s)
		case <-beat.C:
			stale, err = p.stillStale(r, s, stale)
		}
	}
	// The answer has begun, so there is no other to give.
	if ctx.Err() == nil {
		p.Log.DebugContext(ctx, "board no longer updated", "err", err)
	}
	return nil
}

// stillStale keeps the line open, and reports whether what it told may be old; was
// is what it reported before.
func (p *pages) stillStale(r *http.Request, s *stream, was bool) (is bool, err error) {
	is = p.open().Fresh() != nil
	switch {
	case is && was:
		return is, nil
	case is:
		return is, s.send("event: stale\ndata: the store of the house does not answer\n\n")
	case was:
		return is, p.tell(r, s)
	}
	return is, s.send(": still here\n\n")
}

// tell sends the version of the outs.
func (p *pages) tell(r *http.Request, s *stream) error {
	now, err := behind.ShiftOf(r.Context(), p.open())
	if err != nil {
		return err
	}
	return s.send("event: board\ndata: " + versionOf(now) + "\n\n")
}

// stream sends server-sent events.
type stream struct {
	w  http.ResponseWriter
	rc *http.ResponseController
}

// open starts the answer. The limits of the server are for answers that end,
// so they are put off from one message to the next.
func (s *stream) open() error {
	h := s.w.Header()
	h.Set("Content-Type", "text/event-stream")
	h.Set("Cache-Control", "no-store")
	h.Set("X-Accel-Buffering", "no") // some proxies hold answers back
	if err := s.rc.SetReadDeadline(time.Time{}); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return err
	}
	return s.send(": open\n\n")
}

func (s *stream) send(text string) error {
	if err := s.rc.SetWriteDeadline(time.Now().Add(sendTime)); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return err
	}
	if _, err := s.w.Write([]byte(text)); err != nil {
		return err
	}
	return s.rc.Flush()
}
