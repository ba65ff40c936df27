// Package index holds the profiles in bleve: it finds ingredients by name, class,
// families, numbers and allergens, and hands the solver its candidates.
//
// An [Index] is derived from profiles and never changed: when the records
// change, build another. It lives in memory and may be used by many goroutines
// at once. Profiles handed out are the ones it was built from, shared and
// read-only. Bleve types stay inside.
//
// A written name is folded before anything else: [flavor.NormaliseName], then
// one spelling for words that British and American English write differently.
// [Index.Resolve] says which single ingredient a name means, or that it does
// not know; [Index.Search] lists what a bartender may have in mind. Search is
// generous where Resolve is strict, since a wrong ingredient in a drink is worse
// than a question.
//
// Faults of what a user wrote are [*flavor.Fault]; everything else that goes
// wrong is a plain error.
package index
