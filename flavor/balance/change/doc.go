// Package change is one pour moved, added or left out, and the amounts to which a hand takes it.
package change
