// Package wording holds every sentence of a score: how it is worked out, what is wrong with
// a draft and what mends it. It takes what was weighed, numbers and names, and knows no
// rule.
package wording
