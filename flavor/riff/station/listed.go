package station

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Listed is a drink in balance, as it is shown.
type Listed struct {
	Spec     flavor.Spec // without a name: that is for the bar to give
	Kind     Kind
	Score    float64 // 70 to 100
	FamilyID string  // the family it is likeliest to be
	Family   string
	Marks    []flavor.AllergenMark
	Cost     float64 // of all pours, by the guest's prices; 0 without any
	Drink    *mix.Drink
	At       Place
	Text     string // in one line
}

// List judges a settled drink in full. It writes no text.
func (j *Job) List(s *Settled) (Listed, error) {
	result, err := j.Station.Judge.Score(&s.Spec)
	if err != nil {
		return Listed{}, err
	}
	fit := result.Judgement.Fits[0]
	l := Listed{Spec: s.Spec.Clone(), Kind: s.Kind, Score: result.Judgement.Score, FamilyID: fit.ID, Family: fit.Name,
		Marks: s.Spec.Allergens(), Cost: CostOf(&s.Spec, j.Limits.Guest.Prices), Drink: s.Drink, At: s.At}
	l.Spec.Name = ""
	return l, nil
}
