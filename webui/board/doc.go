// Package board is the cover board: what has run out, what becomes of the menu, and
// how the covers were received.
//
// Several screens may show it at once. Each is told by server-sent events which
// state of the house is current, and fetches the board when it shows another. The
// guest's allergens are not the house's state: they stand in the address of the
// screen.
package board
