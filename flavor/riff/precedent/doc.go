// Package precedent is what proven drinks teach: how much of a thing they pour, and
// what they pour together.
package precedent
