package measure_test

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

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
