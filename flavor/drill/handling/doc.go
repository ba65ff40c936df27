// Package handling says what a hand does wrong with a drink whose pours are right, and how
// that shows in the glass.
package handling
