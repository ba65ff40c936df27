// Package entry reads one stretch of a line: as a pour with its amount, its unit
// and its name, or as what else it is. It knows no ingredient.
package entry
