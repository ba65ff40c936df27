// Package naming finds which ingredient a written name means where it stands.
//
// The same word is another ingredient by the dash, by the spoon and by the ounce: a
// [Place] says which, and a [Resolver] looks the name up there, first as what the place makes
// of the word, then as a name or an alias, at full length, without what says little, and
// last as a slip of the pen. A name that means nothing, or two things, is a
// [flavor.DataFault] that asks; it never reaches across what the place allows.
package naming
