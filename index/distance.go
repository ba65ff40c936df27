package index

// editDistance returns the Damerau-Levenshtein distance of a and b in its
// restricted form (optimal string alignment): how many letters must be added,
// dropped, replaced or swapped with their neighbour, none touched twice. It
// returns limit + 1 for anything beyond limit.
//
// F. J. Damerau, A technique for computer detection and correction of spelling
// errors, Communications of the ACM 7 (1964) 171.
func editDistance(a, b []rune, limit int) int {
	if len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	var short [3][32]int // spares most words an allocation
	var before, last, now []int
	if n := len(b) + 1; n <= len(short[0]) {
		before, last, now = short[0][:n], short[1][:n], short[2][:n]
	} else {
		before, last, now = make([]int, n), make([]int, n), make([]int, n)
	}
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			now[j] = d
			least = min(least, d)
		}
		if least > limit {
			return limit + 1
		}
		before, last, now = last, now, before
	}
	return min(last[len(b)], limit+1)
}
