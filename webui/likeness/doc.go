// Package likeness is the page of what in the stock is like what: a map on which
// bottles lie by what they taste of, and the neighbours of one of them.
package likeness
