// Package tasting plans what is tasted side by side: flights of one drink, stepped along an
// axis, and triangle tests of two.
package tasting
