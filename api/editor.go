package api

import (
	"context"

	"counterpour/api/problem"
	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor"
)

// Keeper writes to a house.
type Keeper interface {
	Mark(ctx context.Context, by house.By, r marking.Request) error
	Taste(ctx context.Context, by house.By, r service.TasteRequest) error
	Right(ctx context.Context, by house.By, r service.RightRequest) error
	Name(ctx context.Context, by house.By, r service.NameRequest) error
}

// Editor is the user who makes a request, and what they may change.
type Editor struct {
	By      house.By
	MayNote bool // mark what ran out, and note how a cover was received
	MayEdit bool // everything
}

// mayNote returns who notes something in the house. It fails with [problem.ErrForbidden]
// if they may not.
func (s *Server) mayNote(ctx context.Context) (house.By, error) {
	return s.editor(ctx, "floor", func(e *Editor) bool { return e.MayNote })
}

// mayEdit returns who changes the house. It fails with [problem.ErrForbidden] if they may
// not.
func (s *Server) mayEdit(ctx context.Context) (house.By, error) {
	return s.editor(ctx, "lead", func(e *Editor) bool { return e.MayEdit })
}

func (s *Server) editor(ctx context.Context, role string, may func(*Editor) bool) (house.By, error) {
	if s.opts.Keeper == nil || s.opts.Editor == nil {
		return house.By{}, &flavor.DataFault{Kind: problem.ErrForbidden, Message: "this house takes no changes"}
	}
	e := s.opts.Editor(ctx)
	if !may(&e) {
		return house.By{}, &flavor.DataFault{Kind: problem.ErrForbidden, Message: "this needs the role " + role + "; ask with a token that has it"}
	}
	return e.By, nil
}
