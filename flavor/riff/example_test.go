package riff_test

import (
	"fmt"

	"counterpour/flavor/riff"
)

// Wishes are read as a guest would say them; what cannot be read says why.
func ExampleParseWishes() {
	wishes, err := riff.ParseWishes([]string{"more bitter", "nuttier", "below 12 %"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range wishes {
		fmt.Println(w.Kind, "from", w.Word)
	}
	_, err = riff.ParseWishes([]string{"less sweet", "sweeter"})
	fmt.Println(err)
	// Output:
	// axis from more bitter
	// aroma from nuttier
	// below from below 12 %
	// toward[1]: "less sweet" and "sweeter" cannot both be met; keep one
}
