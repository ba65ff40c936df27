// Package sheet reads what is laid out as a table: what the head says of each column, and
// which stretches of a row are a name, its amount, or nothing that is poured.
package sheet
