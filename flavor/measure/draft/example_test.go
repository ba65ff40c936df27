package draft_test

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

func ExampleParse_faults() {
	err := draft.Parse("Halyard Sour\n-2 oz London dry gin\n1 oz lemon juice\n0 oz rum").Err()
	var faults flavor.DataFaults
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Println(f.Location, f.Value, f.Suggest)
		}
	}
	// Output:
	// line 2 -2 []
	// line 4 0 []
}
