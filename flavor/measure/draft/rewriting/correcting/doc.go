// Package correcting carries out what a text says of itself that it corrects: "rosemary syrup 20...
// no wait, 20 was cloying, go 15".
//
// A text is parted into clauses. A correction is a run of them: words that take something back,
// amounts that are said to be wrong, what is thought of them, and what counts instead. The grammar
// is one: what is corrected (the pour before it, or the one that it names), a signal, and what
// stands there now, an amount, a name, a method or a service, or nothing. A clause that holds
// anything else ends the run. What does not come to one meaning is left as it stands, so that it
// is asked about.
package correcting
