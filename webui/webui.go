package webui

import (
	"embed"
	"errors"
	"fmt"
	"log/slog"
	"net/http"

	"counterpour/webui/frame"
)

//go:embed static templates
var embedded embed.FS

// pages serves everything under /.
type pages struct {
	*frame.Frame
	bar      Bar
	house    House
	trainer  Trainer
	learners *learners
	seal     sealer
	door     Doorkeeper // nil if there is no login
	covered  memo
}

// New returns the handler of all pages and static files. It answers every path
// it is given, so mount other things before it. It fails only if the embedded
// files do not fit together.
func New(bar Bar, log *slog.Logger) (http.Handler, error) { return NewWithLogin(bar, nil, log) }

// NewWithLogin is [New] with a login page, for pages that a guard stands before.
func NewWithLogin(bar Bar, door Doorkeeper, log *slog.Logger) (http.Handler, error) {
	if bar == nil || log == nil {
		return nil, errors.New("webui: needs a bar and a log")
	}
	frame, err := frame.New(embedded, door != nil, log)
	if err != nil {
		return nil, err
	}
	p := &pages{Frame: frame, bar: bar, house: bar.House(), trainer: bar.Trainer(), door: door}
	p.learners = newLearners(p.house.Store())
	if p.seal, err = newSealer(); err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	return p.Guard(p.routes()), nil
}
