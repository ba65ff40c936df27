// Package around finds what a text tells before and behind the drink that it holds: the head of a
// ticket, a list of jobs, who ordered it, how the last one was.
//
// The drink is what stands from the first stretch of the text that pours something to the last one.
// Between these nothing is set aside. A stretch outside pours nothing if it names no ingredient and
// no allergen, measures nothing, tells to pour nothing and changes nothing; words that nobody here
// knows may stand in it among others, but not alone, and not beside a number: those may be a pour.
// What is told of an earlier version, or of what is out of stock, may name anything.
package around
