package station

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// Listed is a drink in balance, as it is shown.
type Listed struct {
	Spec     flavor.Spec // without a name but a working one: to name it is for the bar
	Kind     Kind
	Score    float64 // 70 to 100
	FamilyID string  // the family it is likeliest to be
	Family   string
	Marks    []flavor.AllergenMark
	Cost     float64 // of all pours, by the guest's prices; 0 without any
	Drink    *mix.Drink
	Glass    *sense.Percept
	Name     string // in the form of the trade, see [wording.NameOf]
	Why      string // why it is worth a try
	Text     string // what to pour and what it does, in one line
}

// List judges a settled drink in full. It writes no text.
func (j *Job) List(s *Settled) (Listed, error) {
	result, err := j.Station.Judge.Score(&s.Spec)
	if err != nil {
		return Listed{}, err
	}
	fit := result.Judgement.Fits[0]
	l := Listed{Spec: s.Spec.Clone(), Kind: s.Kind, Score: result.Judgement.Score, FamilyID: fit.ID, Family: fit.Name,
		Marks: s.Spec.Allergens(), Cost: j.Limits.CostOf(&s.Spec), Drink: s.Drink, Glass: s.Glass}
	l.Spec.Name = ""
	l.Name, l.Why = wording.NameOf(&s.Spec, j.From, wording.FamilyWord(&s.Spec, result.Judgement.Fits)), j.Why(&s.Spec)
	return l, nil
}
