package api

import (
	"context"
	"net/http"
	"reflect"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/api/service/kitchen"
	"counterpour/api/shape"
	"counterpour/flavor"
)

// registerScore registers POST /v1/score.
func (s *Server) registerScore() {
	type input struct{ Body shape.ScoreBody }
	handleEncoded[input, shape.ScoreAnswer](s, huma.Operation{
		OperationID: "score", Method: http.MethodPost, Path: "/v1/score", Tags: []string{"drinks"},
		Summary:     "Score a draft",
		Description: "Reads a draft, works out what is in the glass, says how well it fits its family, and finds how to fix it.",
		RequestBody: examples(map[string]any{"text": map[string]any{"text": exampleText}, "spec": map[string]any{"spec": exampleSpec}}),
	}, noStore, func(ctx context.Context, in *input) ([]byte, error) {
		return s.scored.answer(ctx, s.house(), in.Body)
	})
}

// registerCover registers POST /v1/cover.
func (s *Server) registerCover() {
	type input struct{ Body shape.CoverBody }
	handle(s, huma.Operation{
		OperationID: "cover", Method: http.MethodPost, Path: "/v1/cover", Tags: []string{"drinks"},
		Summary:     "Cover what is missing",
		Description: "Finds what to pour instead of one ingredient or several, so that the finished drink moves least and stays in balance.",
		RequestBody: examples(map[string]any{
			"text": map[string]any{"text": exampleText, "missing": "simple syrup", "limit": 3},
			"list": map[string]any{"text": exampleText, "missing": []string{"simple syrup", "aromatic bitters"}, "max_parts": 2, "limit": 3},
			"spec": map[string]any{"spec": exampleSpec, "missing": "simple-syrup", "avoid": []string{"tree nuts"}, "max_parts": 1}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.CoverAnswer, error) {
		return shape.AnswerCover(ctx, s.house(), in.Body)
	})
}

// registerOuts registers POST /v1/outs.
func (s *Server) registerOuts() {
	type input struct{ Body shape.OutsBody }
	handle(s, huma.Operation{
		OperationID: "outs", Method: http.MethodPost, Path: "/v1/outs", Tags: []string{"drinks"},
		Summary:     "Cover a whole menu",
		Description: "Finds every drink that the missing bottles touch, its covers, and the covers that serve the menu best together.",
		RequestBody: examples(map[string]any{
			"house": map[string]any{"out": []string{"falernum", "artichoke amaro"}},
			"menu":  map[string]any{"out": []string{"simple syrup"}, "specs": []any{exampleSpec}, "max_parts": 1}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.OutsAnswer, error) {
		return shape.AnswerOuts(ctx, s.house(), in.Body)
	})
}

// registerCoverage registers POST /v1/coverage.
func (s *Server) registerCoverage() {
	type input struct{ Body shape.CoverageBody }
	handle(s, huma.Operation{
		OperationID: "coverage", Method: http.MethodPost, Path: "/v1/coverage", Tags: []string{"drinks"},
		Summary:     "Look ahead before service",
		Description: "Finds the bottles of a menu that nothing in stock covers well, so that you order two of each.",
		RequestBody: examples(map[string]any{"menu": map[string]any{"specs": []any{exampleSpec}}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.CoverageAnswer, error) {
		return shape.AnswerCoverage(ctx, s.house(), in.Body)
	})
}

// registerTonight registers POST /v1/tonight and POST /v1/tonight/flight.
func (s *Server) registerTonight() {
	type input struct{ Body shape.TonightBody }
	handle(s, huma.Operation{
		OperationID: "tonight", Method: http.MethodPost, Path: "/v1/tonight", Tags: []string{"drinks"},
		Summary:     "Say what can be poured now",
		Description: "The whole menu of the house as things stand, for everybody or for one guest: each drink ready, with its cover, missing something, or not for this guest.",
		RequestBody: examples(map[string]any{"everybody": map[string]any{}, "guest": map[string]any{"avoid": []string{"tree nuts"}}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.TonightAnswer, error) {
		return shape.AnswerTonight(ctx, s.house(), in.Body)
	})
	type flight struct{ Body shape.TonightFlightBody }
	handle(s, huma.Operation{
		OperationID: "tonight-flight", Method: http.MethodPost, Path: "/v1/tonight/flight", Tags: []string{"drinks"},
		Summary:     "Plan a flight of several drinks",
		Description: "A little of two to six drinks of the house for each guest, each as it can be poured now: how many of each to make, and in which order they are tasted; refuses more alcohol than is safe to taste.",
		RequestBody: examples(map[string]any{"two": map[string]any{"drinks": []string{"Tide Table", "Wicker Lee"}, "each_ml": 40, "guests": 4}}),
	}, noStore, func(ctx context.Context, in *flight) (*shape.TonightFlightAnswer, error) {
		return shape.AnswerTonightFlight(ctx, s.house(), in.Body)
	})
}

// registerRiff registers POST /v1/riff.
func (s *Server) registerRiff() {
	type input struct{ Body shape.RiffBody }
	handle(s, huma.Operation{
		OperationID: "riff", Method: http.MethodPost, Path: "/v1/riff", Tags: []string{"drinks"},
		Summary:     "Riff on a draft",
		Description: "Finds variations that stay in balance, meet every wish and differ from each other.",
		RequestBody: examples(map[string]any{"text": map[string]any{"text": exampleText, "toward": []string{"more bitter"}, "limit": 3}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.RiffAnswer, error) {
		return shape.AnswerRiff(ctx, s.house(), in.Body)
	})
}

// registerUseUp registers POST /v1/use-up.
func (s *Server) registerUseUp() {
	type input struct{ Body shape.UseUpBody }
	handle(s, huma.Operation{
		OperationID: "use-up", Method: http.MethodPost, Path: "/v1/use-up", Tags: []string{"drinks"},
		Summary:     "Use bottles up",
		Description: "Finds balanced drafts, across the families, that use up the bottles that must move; says which bottles found no use, and why.",
		RequestBody: examples(map[string]any{"house": map[string]any{"bottles": []string{"fino sherry", "apricot liqueur", "mezcal"}, "avoid": []string{"eggs"}, "limit": 4}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.UseUpAnswer, error) {
		return shape.AnswerUseUp(ctx, s.house(), in.Body)
	})
}

// registerWalk registers POST /v1/walk.
func (s *Server) registerWalk() {
	type input struct{ Body shape.WalkBody }
	handle(s, huma.Operation{
		OperationID: "walk", Method: http.MethodPost, Path: "/v1/walk", Tags: []string{"drinks"},
		Summary:     "Walk from one drink to another",
		Description: "Finds balanced drinks that lie between two, in steps as even as the jigger allows, and adds up the alcohol of small pours.",
		RequestBody: examples(map[string]any{
			"text":  map[string]any{"from": map[string]any{"text": exampleText}, "to": map[string]any{"spec": exampleWalkTo}, "steps": 2},
			"house": map[string]any{"from": map[string]any{"drink": "Ropewalk"}, "to": map[string]any{"text": exampleText}}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.WalkAnswer, error) {
		return shape.AnswerWalk(ctx, s.house(), in.Body)
	})
}

// registerCost registers POST /v1/cost.
func (s *Server) registerCost() {
	type input struct{ Body shape.CostBody }
	handle(s, huma.Operation{
		OperationID: "cost", Method: http.MethodPost, Path: "/v1/cost", Tags: []string{"house"},
		Summary:     "Work out what drinks cost",
		Description: "Says what drinks of the house cost to pour and what each pour has of it, by the prices of the bottles.",
		RequestBody: examples(map[string]any{"one": map[string]any{"drinks": []string{"Ropewalk"}}, "menu": map[string]any{}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.CostAnswer, error) {
		return shape.AnswerCost(ctx, s.house(), in.Body)
	})
}

// registerBatch registers POST /v1/batch.
func (s *Server) registerBatch() {
	type input struct{ Body shape.BatchBody }
	handle(s, huma.Operation{
		OperationID: "batch", Method: http.MethodPost, Path: "/v1/batch", Tags: []string{"house"},
		Summary:     "Plan a batch",
		Description: "Says how much of each ingredient to measure, by volume and by weight, how much water replaces the ice, what the batch costs and how long it keeps.",
		RequestBody: examples(map[string]any{
			"servings": map[string]any{"drink": "Ropewalk", "servings": 40},
			"draft":    map[string]any{"text": "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "servings": 12},
			"bottle":   map[string]any{"drink": "Ropewalk", "bottle_ml": 750, "from": "freezer"}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.BatchAnswer, error) {
		return shape.AnswerBatch(ctx, s.house(), in.Body)
	})
}

// registerPalate registers GET and POST /v1/palate.
func (s *Server) registerPalate() {
	handle(s, huma.Operation{
		OperationID: "get-palate", Method: http.MethodGet, Path: "/v1/palate", Tags: []string{"house"},
		Summary:     "Get the palate of the house",
		Description: "The drinks that the house marked as right, and how they move the families.",
	}, noStore, func(context.Context, *struct{}) (*shape.PalateAnswer, error) {
		return shape.AnswerPalate(s.house()), nil
	})
	type input struct{ Body shape.PalateBody }
	handle(s, huma.Operation{
		OperationID: "mark-right", Method: http.MethodPost, Path: "/v1/palate", Tags: []string{"house"},
		Summary:     "Mark a drink as right",
		Description: "Marks a drink of the house, as it is now, as right for it, or takes the mark off; the families move toward the drinks that are marked.",
		RequestBody: examples(map[string]any{"mark": map[string]any{"drink": "Ropewalk"}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.PalateAnswer, error) {
		return s.markRight(ctx, in.Body)
	})
}

// registerMarks registers GET and POST /v1/marks.
func (s *Server) registerMarks() {
	handle(s, huma.Operation{
		OperationID: "get-marks", Method: http.MethodGet, Path: "/v1/marks", Tags: []string{"house"},
		Summary:     "List what has run out",
		Description: "All that the house keeps, and what of it has run out.",
	}, noStore, func(context.Context, *struct{}) (*shape.MarksAnswer, error) {
		return shape.AnswerMarks(s.house()), nil
	})
	type input struct{ Body shape.MarksBody }
	handle(s, huma.Operation{
		OperationID: "mark", Method: http.MethodPost, Path: "/v1/marks", Tags: []string{"house"},
		Summary:     "Mark what ran out or is back",
		Description: "Marks ingredients of the stock as run out or as there again, all of them or none; a mark that is there already changes nothing.",
		RequestBody: examples(map[string]any{"out": map[string]any{"out": []string{"falernum"}}, "back": map[string]any{"back": []string{"falernum"}}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.MarksAnswer, error) {
		return s.mark(ctx, in.Body)
	})
}

// registerTastings registers GET and POST /v1/tastings.
func (s *Server) registerTastings() {
	handle(s, huma.Operation{
		OperationID: "get-tastings", Method: http.MethodGet, Path: "/v1/tastings", Tags: []string{"house"},
		Summary:     "List how covers were received",
		Description: "How guests or tasters liked covers that were poured here; the search for covers uses this.",
	}, noStore, func(context.Context, *struct{}) (*shape.TastingsAnswer, error) {
		return shape.AnswerTastings(s.house()), nil
	})
	type input struct{ Body shape.TastingBody }
	handle(s, huma.Operation{
		OperationID: "note-tasting", Method: http.MethodPost, Path: "/v1/tastings", Tags: []string{"house"},
		Summary:     "Note how a cover was received",
		Description: "Reads the drink as it was served, under the name of the drink of the house that it stood in for, and notes how it was received; the next search for covers uses this.",
		RequestBody: examples(map[string]any{"kept": map[string]any{"text": exampleServed, "missing": "falernum", "verdict": "kept"},
			"score": map[string]any{"text": exampleServed, "missing": "falernum", "score": 7}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.TastingsAnswer, error) {
		return s.taste(ctx, in.Body)
	})
}

// registerLikeness registers POST /v1/likeness.
func (s *Server) registerLikeness() {
	type input struct{ Body shape.LikenessBody }
	handle(s, huma.Operation{
		OperationID: "likeness", Method: http.MethodPost, Path: "/v1/likeness", Tags: []string{"ingredients"},
		Summary:     "Tell how alike things smell",
		Description: "By the odorants that they share, the rare ones counting most, and by what all of them smell of.",
		RequestBody: examples(map[string]any{
			"ingredients": map[string]any{"of": "ingredients", "names": []string{"lemon juice", "lime juice", "orgeat"}},
			"materials":   map[string]any{"of": "materials", "names": []string{"violet", "rose"}, "skip_unknown": true}}),
	}, noStore, func(_ context.Context, in *input) (*shape.LikenessAnswer, error) {
		return shape.AnswerLikeness(s.house(), in.Body)
	})
}

// registerNames registers GET and POST /v1/names.
func (s *Server) registerNames() {
	handle(s, huma.Operation{
		OperationID: "get-names", Method: http.MethodGet, Path: "/v1/names", Tags: []string{"house"},
		Summary:     "List the house's own words",
		Description: "What words mean in this house alone, such as the name on a label.",
	}, noStore, func(context.Context, *struct{}) (*shape.NamesAnswer, error) {
		return shape.AnswerNames(s.house()), nil
	})
	type input struct{ Body shape.NameBody }
	handle(s, huma.Operation{
		OperationID: "name", Method: http.MethodPost, Path: "/v1/names", Tags: []string{"house"},
		Summary:     "Say what a word of the house means",
		Description: "Keeps what words mean in this house: drafts, completion and imports know them from then on. With undo it forgets them.",
		RequestBody: examples(map[string]any{"name": map[string]any{"words": "Old Harbour", "kind": "London dry gin"}, "undo": map[string]any{"words": "Old Harbour", "undo": true}}),
	}, noStore, func(ctx context.Context, in *input) (*shape.NamesAnswer, error) {
		return s.name(ctx, in.Body)
	})
}

// searchParams are the query parameters of the ingredient search. An empty parameter
// counts as absent, since HTML forms send empty ones.
type searchParams struct {
	Q         string         `query:"q" maxLength:"200" doc:"Words of a name, an alias, a class, an aroma family or a material"`
	Class     classParam     `query:"class" doc:"Only this class"`
	Family    familyParam    `query:"family" doc:"Only what carries this aroma family"`
	BitterMin optionalNumber `query:"bitter_min" doc:"Only what is at least this bitter, in mg/L of quinine"`
	ABVMax    optionalNumber `query:"abv_max" doc:"Only what is at most this strong, in % vol"`
	Avoid     []string       `query:"avoid,explode" maxItems:"50" doc:"Only what is free of this allergen; may be repeated"`
	Like      string         `query:"like" maxLength:"200" doc:"Id of an ingredient; sorts the hits by how near they are to its profile"`
	Limit     int            `query:"limit" minimum:"1" maximum:"100" default:"20" doc:"Most hits to list"`
}

func (p *searchParams) request() kitchen.FindRequest {
	r := kitchen.FindRequest{Text: p.Q, Class: string(p.Class), Family: string(p.Family), Like: p.Like, Limit: p.Limit,
		BitterMin: p.BitterMin.pointer(), ABVMax: p.ABVMax.pointer()}
	for _, a := range p.Avoid {
		if a != "" {
			r.Avoid = append(r.Avoid, a)
		}
	}
	return r
}

// registerIngredients registers GET /v1/ingredients and GET /v1/ingredients/{id}.
func (s *Server) registerIngredients() {
	handle(s, huma.Operation{
		OperationID: "find-ingredients", Method: http.MethodGet, Path: "/v1/ingredients", Tags: []string{"ingredients"},
		Summary:     "Find ingredients",
		Description: "A hit meets every parameter that is given. Without words the hits are sorted by id.",
	}, aMinute, func(ctx context.Context, in *searchParams) (*shape.SearchAnswer, error) {
		return shape.AnswerSearch(ctx, &s.house().Ingredients, in.request())
	})
	type input struct {
		ID string `path:"id" maxLength:"200" doc:"Id of the ingredient" example:"london-dry-gin"`
	}
	handle(s, huma.Operation{
		OperationID: "get-ingredient", Method: http.MethodGet, Path: "/v1/ingredients/{id}", Tags: []string{"ingredients"},
		Summary:     "Get an ingredient",
		Description: "The profile of one ingredient, and where each of its numbers comes from.",
	}, aMinute, func(ctx context.Context, in *input) (*shape.IngredientAnswer, error) {
		return shape.AnswerIngredient(s.house(), in.ID)
	})
}

// registerTemplates registers GET /v1/templates.
func (s *Server) registerTemplates() {
	handle(s, huma.Operation{
		OperationID: "get-templates", Method: http.MethodGet, Path: "/v1/templates", Tags: []string{"drinks"},
		Summary:     "List the families of drinks",
		Description: "Each with its ratio as published and as proven drinks have it.",
	}, aMinute, func(ctx context.Context, _ *struct{}) (*shape.TemplatesAnswer, error) {
		return shape.AnswerTemplates(s.house())
	})
}

// optionalNumber is a query parameter that may be absent. huma takes no pointers for
// parameters, and zero is a valid limit.
type optionalNumber struct {
	Value float64
	set   bool
}

func (optionalNumber) Schema(huma.Registry) *huma.Schema {
	zero := 0.0
	return &huma.Schema{Type: huma.TypeNumber, Minimum: &zero}
}

// Receiver returns where huma stores the number.
func (o *optionalNumber) Receiver() reflect.Value {
	return reflect.ValueOf(o).Elem().FieldByName("Value")
}

// OnParamSet is called by huma with whether the parameter was present.
func (o *optionalNumber) OnParamSet(set bool, _ any) { o.set = set }

func (o *optionalNumber) pointer() *float64 {
	if !o.set {
		return nil
	}
	return &o.Value
}

type classParam string

func (classParam) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Type: huma.TypeString, Enum: wordsOf(flavor.Classes())}
}

type familyParam string

func (familyParam) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Type: huma.TypeString, Enum: wordsOf(kitchen.FamilyIDs())}
}

// wordsOf are the words that a parameter may be.
func wordsOf[T ~string](all []T) (out []any) {
	for _, w := range all {
		out = append(out, string(w))
	}
	return out
}
