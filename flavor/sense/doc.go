// Package sense is the one place that knows what people can tell apart.
//
// # A glass
//
// A glass is a vector of concentrations, see [Sense] for each one's unit, its
// Weber fraction and its detection threshold, with sources. What a millilitre of
// an ingredient brings is a [Vector] too, so a glass is the sum of its pours over
// its volume: everything mixes linearly.
//
// # Steps
//
// A step is one just-noticeable difference. Within a sense it follows Weber's
// law with a floor,
//
//	|ln((x+x₀)/(y+x₀))| / ln(1+k)
//
// with the Weber fraction k, and x₀ set so that k·x₀ is the detection threshold:
// far above the floor a step is the fraction k, and from nothing to the threshold
// is one step. Aroma is a direction with a length: the same law holds along the
// length, and the turn of the direction counts as an arc chord of that radius.
//
// Steps of different senses add up as a Minkowski sum with exponent 2, the
// Euclidean one. That is how independent cues add up for an observer who uses
// all of them (the sensitivities d′ of independent channels add in quadrature:
// Green and Swets, Signal Detection Theory and Psychophysics, 1966), and how
// dimensions of a percept that is judged as a whole add up (Garner, The Processing of
// Information and Structure, 1974; exponent 1 holds for dimensions that one
// attends to apart). Both from memory.
//
// # Aroma
//
// A material carries odorants, molecules with an importance; an odorant smells
// of one or several notes. Two materials are alike by the molecules that they
// share, the rare ones counting most, and by the character of all they have: a
// positive semidefinite kernel, factored to [AromaDims] numbers a material, see
// [Space].
//
// # How likeness was checked
//
// By facts of the trade that were written down before they were looked at, and by
// leaving odorants out, see kernel.go. Not by published thresholds: they say how
// little of an odorant is smelt, and nothing of what it smells of, so no likeness
// follows from them. Tables of descriptors and of shared compounds that may be used
// freely are not at hand.
//
// # What is left out
//
// Suppression within a glass: sugar dulls acid and bitterness, acid dulls sugar,
// salt dulls bitterness, and cold dulls sugar and smell (mixture suppression: Keast
// and Breslin, Food Quality and Preference 14:111, 2003; from memory). It is
// left out because steps compare two glasses that are mostly alike: what dulls a
// sense in both of them changes the size of its step little, since by Weber's law a
// step is a share of what is there. Where only one of the two is sweet, salty or
// cold, steps of bitter and sour are overstated, by up to a half in the mixtures
// that were published. Sweet against sour, where it matters most, is judged
// by ratio, in package template, whose proven drinks were tasted with it at work.
//
// Adaptation, order of tasting, and the glass's shape. Sugar's own thickness counts
// as sweetness only.
//
// A [Space] is built from a table of odorants and is read-only afterwards; it is
// safe for concurrent use. Nothing here is global.
package sense
