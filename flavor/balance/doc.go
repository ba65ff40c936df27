// Package balance says how a draft sits in its family, what is off, and the smallest change of
// its pours that brings it back.
//
// A draft is mixed, and weighed against the proven drinks ([weigh.Build.Judge]): its score is 100
// at the centre of a family and 70 at the edge of its good drinks; a drink between families is
// scored in each and the scores are averaged by how surely it belongs. What is poured beyond
// habit, what no drink has and how it is made may take it further down. Explain tells that
// arithmetic line by line.
//
// What the weighing finds is told as at most three faults ([fault.Of]): how a draft is made, what
// is poured beyond habit, then what may be wrong with its ratio, the likeliest first. Where one
// pour alone takes a draft away from drinks that are known, that is its fault (misplaced.go).
//
// Fixes move the pour that the faults name, or leave it out; only if that does not balance the
// draft are others moved, then two, then something added ([mend.Bench.Fixes]).
package balance
