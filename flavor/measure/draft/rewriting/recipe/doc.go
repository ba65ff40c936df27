// Package recipe reads a recipe as a book, a magazine or a card prints it: a list of what is poured,
// and prose around it, which tells what the drink is like and how it is made.
//
// It leaves the list as it is, and of the prose what may say something of the drink that the list
// does not: another ingredient, a measure, a garnish. The rest becomes blanks, and its method, its
// service and its glass stand in them in a few words, so that the text is as long as before, byte for
// byte. Package reading keeps what is read of it only if nothing is left open.
package recipe
