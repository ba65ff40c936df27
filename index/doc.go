// Package index finds ingredients by name, class, aroma family, numbers and allergens,
// with bleve, and selects the candidates for the solver.
//
// An [Index] is built from profiles and immutable. When records change, build another or
// use [Index.Follow]. It is held in memory and safe for concurrent use. The profiles that
// it returns are those that it was built from; they must not be changed. No bleve type is
// exported.
//
// Every name is folded first: [flavor.NormaliseName], then one spelling for words that
// British and American English spell differently. [Index.Resolve] returns the single
// ingredient that a name means, or an error; [Index.Search] lists what a bartender may
// have in mind. Search is tolerant and Resolve strict, since a wrong ingredient in a
// drink is worse than a question.
//
// Errors in a user's input are [*flavor.DataFault]s; all others are plain errors.
package index
