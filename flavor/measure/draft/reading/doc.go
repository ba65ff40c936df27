// Package reading tries the ways in which a text may be read, and takes the one that leaves least
// open.
//
// Each way makes a draft of the text, which package meaning works out: as it stands; without what
// it corrects, names twice or tells of making; set in other lines; as a text that runs on; with
// its clipped words written out; without the talk around its pours; and at last as what most
// likely stands in it. What a way changed or passed over is said in a note. Nothing is guessed
// silently, and all faults of the way that was taken are reported together.
package reading
