package tasting

import (
	"math/rand/v2"

	"counterpour/flavor"
)

// Williams returns serving orders of n things balanced for what comes before:
// over all rows every thing stands in every place equally often and follows
// every other thing equally often (Williams, Aust J Sci Res A 2:149, 1949). An
// even n takes n rows, an odd one 2n. It fails for n below 2 or above 26.
func Williams(n int) ([][]int, error) {
	if n < 2 || n > maxServed {
		return nil, flavor.Invalid("n", n, "%d things have no serving orders; use 2 to %d", n, maxServed)
	}
	first := make([]int, n)
	for i := range first {
		if i%2 == 1 {
			first[i] = (i + 1) / 2
		} else {
			first[i] = (n - i/2) % n
		}
	}
	var rows [][]int
	for shift := range n {
		row := make([]int, n)
		for i, v := range first {
			row[i] = (v + shift) % n
		}
		rows = append(rows, row)
	}
	if n%2 == 0 {
		return rows, nil
	}
	for _, row := range rows[:n:n] {
		mirror := make([]int, n)
		for i, v := range row {
			mirror[n-1-i] = v
		}
		rows = append(rows, mirror)
	}
	return rows, nil
}

const maxServed = 26

// The three-digit codes that blind a sample.
const firstCode, lastCode = 100, 999

// codes draws n different three-digit codes.
func codes(n int, rng *rand.Rand) []int {
	all := rng.Perm(lastCode - firstCode + 1)[:n]
	for i := range all {
		all[i] += firstCode
	}
	return all
}

// Streams keep what is drawn for one purpose apart from what is drawn for
// another from the same seed.
const (
	flightStream   = 0x466c69676874
	triangleStream = 0x547269616e67
)
