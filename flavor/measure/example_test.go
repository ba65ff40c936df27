package measure_test

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure"
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
	draft, err := measure.Parse("Halyard Sour\n2oz London dry gin\n3/4 oz fresh lemon juice\n0.75 oz simple syrup\nshaken, up")
	if err != nil {
		fmt.Println(err)
		return
	}
	spec, err := measure.Resolve(draft, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ml\n", spec.VolumeML())
	fmt.Print(measure.Format(spec))
	// Output:
	// 103.5 ml
	// Halyard Sour
	// 2 oz London dry gin
	// ¾ oz Lemon juice
	// ¾ oz Simple syrup
	// shake, up
}

func ExampleParse_faults() {
	_, err := measure.Parse("Halyard Sour\n-2 oz London dry gin\n1 oz lemon juice\nsheke, up")
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

func ExampleNeighbours() {
	for _, a := range measure.Neighbours(0.75, flavor.Ounce, 2) {
		fmt.Println(measure.FormatAmount(a, flavor.Ounce))
	}
	// Output:
	// ¼ oz
	// ½ oz
	// 1 oz
	// 1¼ oz
}
