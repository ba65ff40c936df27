// Package stock is the pages of what the house keeps: its bottles and what it makes
// itself.
//
// A desk (see stockDesk) is the form of one kind of record, with its history and
// what happens when two people change it at once.
package stock
