// Package stock is the pages of what the house keeps: its bottles and what it makes
// itself. Each kind of record is edited on a [desk.Desk].
package stock
