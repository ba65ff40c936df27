// Package precedent is what proven drinks teach: how much of a thing they pour, what
// they pour together, what they are made of, and which of them a drink is kin to.
package precedent
