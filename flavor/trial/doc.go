// Package trial tests the advice against the world: proven drinks that the
// families have not seen must come out in balance, the same drinks spoilt must
// not, and the fault and the first fix must name what was spoilt.
package trial
