package api

import (
	"context"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/riff"
)

// DefaultRiffs is how many riffs are listed if nobody says.
const DefaultRiffs = 10

// RiffBody asks for variations of a draft.
type RiffBody struct {
	Draft
	Toward []string `json:"toward,omitempty" maxItems:"20" doc:"What every riff must do, such as \"more bitter\", \"nuttier\", \"no nuts\" or \"below 12 %\""`
	Avoid  []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have; what may contain one counts as containing it"`
	Stock  []string `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; left out, the stock of the house and what is in the draft"`
	Limit  int      `json:"limit,omitempty" minimum:"1" maximum:"100" default:"10" doc:"Most riffs to list"`
	Seed   uint64   `json:"seed,omitempty" doc:"Another seed, another list of much the same quality"`
}

// RiffAnswer is the variations found.
type RiffAnswer struct {
	Riffs     []Riff     `json:"riffs" doc:"The best first, each unlike the others"`
	Relatives []Relative `json:"relatives" doc:"The proven drinks nearest to the draft"`
	LeastJND  float64    `json:"least_jnd" doc:"The least distance between any two riffs, in just-noticeable differences"`
	Refused   Unlisted   `json:"refused" doc:"How many could not be listed, and why"`
}

// Riff is one variation.
type Riff struct {
	Spec        Spec       `json:"spec" doc:"As a spec that can be sent back"`
	Kind        string     `json:"kind" doc:"What was varied"`
	Family      string     `json:"family" doc:"Id of the family that it is likeliest to be"`
	Score       float64    `json:"score"`
	DistanceJND float64    `json:"distance_jnd" doc:"From the draft, in just-noticeable differences"`
	Changes     []Change   `json:"changes"`
	ABVPct      float64    `json:"abv_pct" doc:"Finished"`
	Allergens   []Allergen `json:"allergens"`
	Text        string     `json:"text"`
}

// Relative is a proven drink near to the draft.
type Relative struct {
	Name     string  `json:"name"`
	Family   string  `json:"family"`
	Source   string  `json:"source"`
	Status   string  `json:"status" doc:"published, or from memory"`
	Distance float64 `json:"distance" doc:"In log-ratios and aroma; 0 is the same drink"`
}

// Unlisted counts what could not be listed.
type Unlisted struct {
	ByGuest  int `json:"by guest" doc:"Ingredients that the guest or a wish rules out"`
	Off      int `json:"out of balance"`
	ByLimit  int `json:"beyond a limit"`
	Unmet    int `json:"wish not met"`
	TooAlike int `json:"too alike"`
}

// relatives is how many proven drinks are listed.
const relatives = 5

// AnswerRiff finds variations of a draft that stay in balance.
func (k *Kitchen) AnswerRiff(ctx context.Context, body RiffBody) (*RiffAnswer, error) {
	request, spec, err := k.riffRequest(ctx, body)
	if err != nil {
		return nil, err
	}
	r, err := k.Riffer.Riff(ctx, *request)
	if err != nil {
		return nil, err
	}
	near, err := k.Riffer.Relatives(spec, relatives)
	if err != nil {
		return nil, err
	}
	return &RiffAnswer{
		Riffs: list(r.Riffs, func(x riff.Riff) Riff {
			return Riff{Spec: specOf(&x.Spec), Kind: string(x.Kind), Family: x.FamilyID, Score: roundScore(x.Score),
				DistanceJND: round(x.Distance, digitsJND), Changes: list(x.Changes, changeOf),
				ABVPct: round(x.Drink.ABV, digitsPct), Allergens: allergensOf(&x.Spec), Text: x.Text}
		}),
		Relatives: list(near, func(x riff.Relative) Relative {
			return Relative{x.Proven.Spec.Name, x.Proven.Family, x.Proven.Source, x.Proven.Status, round(x.Distance, digitsJND)}
		}),
		LeastJND: riff.LeastDistance,
		Refused:  Unlisted(r.Refused),
	}, nil
}

func (k *Kitchen) riffRequest(ctx context.Context, body RiffBody) (*riff.Request, *flavor.Spec, error) {
	var faults flavor.Faults
	if f := inRange("limit", body.Limit, 1, riff.MaxLimit); f != nil {
		faults = append(faults, f)
	}
	spec, err := k.read(body.Draft)
	if err != nil && !isFault(err) {
		return nil, nil, err
	}
	faults = append(faults, faultsOf(err)...)
	avoid, err := avoided(body.Avoid)
	faults = append(faults, faultsOf(err)...)
	wishes, err := riff.ParseWishes(body.Toward)
	faults = append(faults, faultsOf(err)...)
	if len(faults) > 0 {
		return nil, nil, faults
	}
	stock, err := k.stockOf(ctx, k.House.Name, body.Stock, nil)
	if err != nil {
		return nil, nil, err
	}
	if body.Stock == nil {
		stock = withPours(stock, &spec)
	}
	return &riff.Request{Spec: &spec, Stock: stock, Guest: cover.Guest{Avoid: avoid}, Toward: wishes,
		Limit: body.Limit, Seed: body.Seed}, &spec, nil
}

// withPours returns a stock with what a draft is made of: who writes it down
// has it at hand.
func withPours(stock []*flavor.Profile, s *flavor.Spec) []*flavor.Profile {
	has := make(map[string]bool, len(stock))
	out := make([]*flavor.Profile, 0, len(stock)+len(s.Pours))
	for _, p := range stock {
		has[p.ID] = true
		out = append(out, p)
	}
	for _, p := range s.Pours {
		if !has[p.Profile.ID] {
			has[p.Profile.ID] = true
			out = append(out, p.Profile)
		}
	}
	return out
}
