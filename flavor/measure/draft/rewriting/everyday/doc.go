// Package everyday finds what a draft says in everyday words beside its pours: how the drink was
// liked, who made it, when it is served, what may be tried another time.
//
// Such a clause states no measure, and no number but one that counts or refers ("8 judges on 12 May",
// "shelf 2", "7/10", "+£4"), which its shape and the class of the word beside it tell. It changes nothing, says nothing of how the drink is
// made, and names nothing; or it names something without an amount in a sentence that pours
// nothing, beside pours that all have theirs: "could work with tequila too". What is poured already
// may be named again: "the honey hides the smoke". A word that is not known to be everyday ends it:
// it may be an ingredient that nobody here has heard of.
package everyday
