package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/api/service"
)

// NameBody says what the house's own words mean, or that a word is forgotten.
type NameBody struct {
	Words string `json:"words" minLength:"1" maxLength:"200" doc:"As they are written, such as the name on a label"`
	Kind  string `json:"kind,omitempty" maxLength:"200" doc:"Name, alias or id of what they mean; left out with undo"`
	Undo  bool   `json:"undo,omitempty" doc:"Forget the words"`
}

// NamesAnswer lists the house's own words.
type NamesAnswer struct {
	Names []Named `json:"names" doc:"By what is written"`
}

// Named is one of the house's own words and what it means.
type Named struct {
	Words string `json:"words"`
	ID    string `json:"id"`
	Name  string `json:"name"`
}

// AnswerNames lists the house's own words.
func AnswerNames(house *service.Snapshot) *NamesAnswer {
	return &NamesAnswer{Names: list(house.Names(), func(n service.Named) Named { return Named{n.Words, n.Profile.ID, n.Profile.Name} })}
}

// name stores or forgets what words mean, and returns the house's own words after it.
func (s *Server) name(ctx context.Context, body NameBody) (*NamesAnswer, error) {
	by, err := s.mayEdit(ctx)
	if err != nil {
		return nil, err
	}
	if err := s.opts.Keeper.Name(ctx, by, service.NameRequest{Words: body.Words, Kind: body.Kind, Undo: body.Undo}); err != nil {
		return nil, err
	}
	return AnswerNames(s.house()), nil
}

// registerNames registers GET and POST /v1/names.
func (s *Server) registerNames() {
	handle(s, huma.Operation{
		OperationID: "get-names", Method: http.MethodGet, Path: "/v1/names", Tags: []string{"house"},
		Summary:     "List the house's own words",
		Description: "What words mean in this house alone, such as the name on a label.",
	}, noStore, func(context.Context, *struct{}) (*NamesAnswer, error) {
		return AnswerNames(s.house()), nil
	})
	type input struct{ Body NameBody }
	handle(s, huma.Operation{
		OperationID: "name", Method: http.MethodPost, Path: "/v1/names", Tags: []string{"house"},
		Summary:     "Say what a word of the house means",
		Description: "Keeps what words mean in this house: drafts, completion and imports know them from then on. With undo it forgets them.",
		RequestBody: examples(map[string]any{"name": map[string]any{"words": "Old Harbour", "kind": "London dry gin"}, "undo": map[string]any{"words": "Old Harbour", "undo": true}}),
	}, noStore, func(ctx context.Context, in *input) (*NamesAnswer, error) {
		return s.name(ctx, in.Body)
	})
}
