package api

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/api/shape"
	"counterpour/data/house"
)

// mark writes what ran out and what is back, and returns the stock after it.
func (s *Server) mark(ctx context.Context, body shape.MarksBody) (*shape.MarksAnswer, error) {
	by, err := s.mayNote(ctx)
	if err != nil {
		return nil, err
	}
	if err := s.opts.Keeper.Mark(ctx, by, marking.Request{Out: body.Out, Back: body.Back, BottlesOut: body.BottlesOut, BottlesBack: body.BottlesBack}); err != nil {
		return nil, err
	}
	return shape.AnswerMarks(s.house()), nil
}

// taste notes how a cover was received, and returns all tastings.
func (s *Server) taste(ctx context.Context, body shape.TastingBody) (*shape.TastingsAnswer, error) {
	by, err := s.mayNote(ctx)
	if err != nil {
		return nil, err
	}
	request := service.TasteRequest{Served: body.ToCentre(), Missing: body.Missing, Reception: house.Reception(body.Verdict), Score: body.Score}
	if err := s.opts.Keeper.Taste(ctx, by, request); err != nil {
		return nil, err
	}
	return shape.AnswerTastings(s.house()), nil
}

// markRight marks a drink as right, or removes the mark, and returns the palate after it.
func (s *Server) markRight(ctx context.Context, body shape.PalateBody) (*shape.PalateAnswer, error) {
	by, err := s.mayEdit(ctx)
	if err != nil {
		return nil, err
	}
	if err := s.opts.Keeper.Right(ctx, by, service.RightRequest{Drink: body.Drink, Undo: body.Undo}); err != nil {
		return nil, err
	}
	return shape.AnswerPalate(s.house()), nil
}

// name stores or forgets what words mean, and returns the house's own words after it.
func (s *Server) name(ctx context.Context, body shape.NameBody) (*shape.NamesAnswer, error) {
	by, err := s.mayEdit(ctx)
	if err != nil {
		return nil, err
	}
	if err := s.opts.Keeper.Name(ctx, by, service.NameRequest{Words: body.Words, Kind: body.Kind, Undo: body.Undo}); err != nil {
		return nil, err
	}
	return shape.AnswerNames(s.house()), nil
}
