// Package bench is the page on which a drink is developed: a draft as text or as
// rows, its score with what is off and how to fix it, what becomes of it with a
// bottle gone, at another volume or beside another draft, and how it is kept in the
// house. The calculators of the page /tools stand here too.
//
// Words: a draft is the text in the box; an answer is everything that the server
// says about it; to become is to have the whole draft replaced by another text,
// which every button that rewrites the draft asks for.
package bench
