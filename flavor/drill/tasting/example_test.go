package tasting_test

import (
	"fmt"

	"counterpour/flavor/drill/tasting"
)

// The least numbers of right answers of a triangle test at an alpha of 0.05.
func ExampleLeastRight() {
	for _, n := range []int{12, 18, 24, 30, 36} {
		fmt.Printf("%d of %d\n", tasting.LeastRight(n, 0.05), n)
	}
	// Output:
	// 8 of 12
	// 10 of 18
	// 13 of 24
	// 15 of 30
	// 18 of 36
}

// Three builds are served in six orders, so that each follows each other one
// equally often.
func ExampleWilliams() {
	rows, err := tasting.Williams(3)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range rows {
		fmt.Println(row)
	}
	// Output:
	// [0 1 2]
	// [1 2 0]
	// [2 0 1]
	// [2 1 0]
	// [0 2 1]
	// [1 0 2]
}
