package wish_test

import (
	"fmt"

	"counterpour/flavor/riff/wish"
)

// Wishes are read as a guest would say them; what cannot be read says why.
func ExampleParse() {
	wishes, err := wish.Parse([]string{"more bitter", "nuttier", "below 12 %"}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range wishes {
		fmt.Println(w.Kind, "from", w.Word)
	}
	_, err = wish.Parse([]string{"less sweet", "sweeter"}, nil)
	fmt.Println(err)
	// Output:
	// sense from more bitter
	// aroma from nuttier
	// below from below 12 %
	// toward[1]: "less sweet" and "sweeter" cannot both be met; keep one
}
