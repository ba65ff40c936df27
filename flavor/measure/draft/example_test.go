package draft_test

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

// shelf finds what is on a very short shelf.
type shelf map[string]*flavor.Profile

func (s shelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	if p, ok := s[flavor.NormaliseName(written)]; ok {
		return p, flavor.Match{Asked: written, How: flavor.MatchExact}, nil
	}
	return nil, flavor.Match{}, &flavor.Fault{Kind: flavor.ErrUnknown, Value: written,
		Message: fmt.Sprintf("%q is not on the shelf", written)}
}

func Example() {
	s := shelf{
		"london dry gin": {Name: "London dry gin", Class: flavor.ClassGin},
		"lemon juice":    {Name: "Lemon juice", Class: flavor.ClassSourJuice},
		"simple syrup":   {Name: "Simple syrup", Class: flavor.ClassSyrup},
	}
	spec, err := draft.Read("Halyard Sour\n2oz London dry gin / .75 fresh lemon / 3/4 simple\nshaken, coupe", s)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ml\n", spec.VolumeML())
	fmt.Print(draft.Format(spec))
	// Output:
	// 103.5 ml
	// Halyard Sour
	// 2 oz London dry gin
	// ¾ oz Lemon juice
	// ¾ oz Simple syrup
	// shake, up
	// glass: coupe
}

func ExampleParse_faults() {
	err := draft.Parse("Halyard Sour\n-2 oz London dry gin\n1 oz lemon juice\nsheke, up").Err()
	var faults flavor.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Println(f.Location, f.Value, f.Suggest)
		}
	}
	// Output:
	// line 2 -2 []
	// line 4 sheke [shake]
}
