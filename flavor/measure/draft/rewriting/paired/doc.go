// Package paired puts each amount of a draft before the name that it is of, where a ratio, a sign or a
// turn of speech parts the two.
//
// There are two grammars. A ratio stands beside as many names as it has numbers, perhaps with what the
// whole drink comes to: "6:1 gin to dry vermouth, 70 ml total". In a chain amounts and names take turns,
// so that each amount has one neighbour that is a name: "rye, 2. amaro, 1.", "half an ounce of gin, lime
// one ounce". A text that is neither throughout is left as it stands.
package paired
