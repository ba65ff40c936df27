// Package draw makes the drawings of the pages as SVG: the strips of a drink beside its
// family, the map of a stock, bars of before and after, and more.
//
// A drawing is one svg element with a title and a description. It needs no style sheet,
// no script and no colour: marks differ by shape and take the colour of the text, so that
// a screen, a print and an e-reader show the same. Coordinates are in units of the
// drawing and rounded to a tenth, so that every processor writes the same text.
package draw
