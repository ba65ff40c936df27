package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/api/shape/training"
)

// registerTraining registers what trains people: rounds and their grades, tasting flights,
// triangle tests, cards for new starters. Nothing of it is kept.
func (s *Server) registerTraining() {
	type round struct{ Body training.RoundBody }
	handle(s, huma.Operation{
		OperationID: "round", Method: http.MethodPost, Path: "/v1/round", Tags: []string{"training"},
		Summary:     "Make a training round",
		Description: "Asks one question about a drink of the menu, or of a proven one. Show all but the round itself to whoever plays, and send it back with the answer.",
		RequestBody: examples(map[string]any{"fault": map[string]any{"kind": "fault", "axis": "sour", "size_jnd": 6, "seed": "7"},
			"guest": map[string]any{"kind": "order", "avoid": []string{"eggs"}, "seed": "7"}}),
	}, noStore, func(_ context.Context, in *round) (*training.RoundAnswer, error) {
		return training.AnswerRound(s.house(), in.Body)
	})
	type grade struct{ Body training.GradeBody }
	handle(s, huma.Operation{
		OperationID: "grade", Method: http.MethodPost, Path: "/v1/round/grade", Tags: []string{"training"},
		Summary:     "Grade the answer to a training round",
		Description: "Makes the round again, and says whether the answer is right, what would have been, and the arithmetic of it. The result is not kept.",
	}, noStore, func(_ context.Context, in *grade) (*training.GradeAnswer, error) {
		return training.AnswerGrade(s.house(), in.Body)
	})
	type flight struct{ Body training.FlightBody }
	handle(s, huma.Operation{
		OperationID: "flight", Method: http.MethodPost, Path: "/v1/flight", Tags: []string{"training"},
		Summary:     "Plan a tasting flight",
		Description: "Plans small builds of one drink that differ along one axis in noticeable steps, with codes, serving orders and a sheet to batch them by; refuses more alcohol than is safe to taste.",
		RequestBody: examples(map[string]any{
			"text":  map[string]any{"text": exampleText, "axis": "sour", "builds": 3, "step_jnd": 1.5, "tasters": 4, "seed": "7"},
			"house": map[string]any{"drink": "Ropewalk", "axis": "strong", "seed": "7"}}),
	}, noStore, func(_ context.Context, in *flight) (*training.FlightAnswer, error) {
		return training.AnswerFlight(s.house(), in.Body)
	})
	type triangle struct{ Body training.TriangleBody }
	handle(s, huma.Operation{
		OperationID: "triangle", Method: http.MethodPost, Path: "/v1/triangle", Tags: []string{"training"},
		Summary:     "Plan a triangle test",
		Description: "Plans a test whether tasters can tell a drink from the same drink with something else poured in it: how many tasters, what each is handed, and how to pour both.",
		RequestBody: examples(map[string]any{"cover": map[string]any{"drink": "Ropewalk", "cover": "agave syrup", "tasters": 12, "seed": "7"}}),
	}, noStore, func(ctx context.Context, in *triangle) (*training.TriangleAnswer, error) {
		return training.AnswerTriangle(ctx, s.house(), in.Body)
	})
	type card struct {
		ID string `path:"id" maxLength:"200" doc:"Id of the family" example:"sour"`
	}
	handle(s, huma.Operation{
		OperationID: "get-card", Method: http.MethodGet, Path: "/v1/templates/{id}/card", Tags: []string{"training"},
		Summary:     "Get the card of a family",
		Description: "A family on one page, for a new starter: its ratio, how far each part may move by itself, three drinks of the house or proven ones, and its usual faults.",
	}, noStore, func(_ context.Context, in *card) (*training.CardAnswer, error) {
		return training.AnswerCard(s.house(), in.ID)
	})
}
