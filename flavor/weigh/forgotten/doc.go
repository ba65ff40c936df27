// Package forgotten finds what nearly every proven drink with the same rest has, and a draft
// has not: its base, what is sour or sweet, what lengthens it, its bitters. Somebody forgot it.
//
// A draft is held against the rests of proven drinks, so that what is missing takes no part in
// saying which are like it. The same rests tell what is usually poured there.
package forgotten
