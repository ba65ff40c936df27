package edit_test

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/reading"
)

// shelf finds what is on a very short shelf.
type shelf map[string]*flavor.Profile

func (s shelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	if p, ok := s[flavor.NormaliseName(written)]; ok {
		return p, flavor.Match{Asked: written, How: flavor.MatchExact}, nil
	}
	return nil, flavor.Match{}, &flavor.DataFault{Kind: flavor.ErrUnknown, Value: written,
		Message: fmt.Sprintf("%q is not on the shelf", written)}
}

func Example() {
	s := shelf{
		"london dry gin": {Name: "London dry gin", Class: flavor.ClassGin},
		"lemon juice":    {Name: "Lemon juice", Class: flavor.ClassSourJuice},
		"simple syrup":   {Name: "Simple syrup", Class: flavor.ClassSyrup},
	}
	spec, err := reading.Read("Halyard Sour\n2oz London dry gin / .75 fresh lemon / 3/4 simple\nshaken, coupe", s)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ml\n", spec.VolumeML())
	fmt.Print(edit.Format(spec))
	// Output:
	// 103.5 ml
	// Halyard Sour
	// 2 oz London dry gin
	// ¾ oz Lemon juice
	// ¾ oz Simple syrup
	// shake, up
	// glass: coupe
}
