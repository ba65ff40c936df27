// Package tongue holds what bars of other countries write for what they pour, and turns it
// into English.
//
// Its words stand as text in the folder words, one line for each meaning; how such a line is
// written is told at [parseLine]. A name is looked up whole first ([Name]), and else put
// together of what its parts mean ([English]): "Gurkensaft", "jugo de naranja", "сок лимона".
// Keys are those of [flavor.NormaliseName]. Nothing here knows which ingredients there are:
// whether what comes out is one is for the caller to ask.
package tongue
