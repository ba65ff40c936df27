// Package likeliest parts a text that the rules refuse into what most likely stands in it.
//
// Every stretch of the text is one of a few things: a pour, words of making, what is laid on the
// drink, the name of the drink, the heading of a card, a remark, or words that take a pour back.
// Each has a cost, the higher the less usual it is, and the cheapest way to part the whole text
// is taken. It is written as a list of lines, which is read by the rules of any other draft, so
// that there is one grammar only.
//
// Nothing is parted by a guess: a number has to be an amount or to stand where numbers count or
// refer, what is passed over must not name anything that is not poured, a word of choice or of
// second thoughts that is no part of a known turn of speech ends the search, and so does another
// way to part the text that costs hardly more and pours something else.
package likeliest
