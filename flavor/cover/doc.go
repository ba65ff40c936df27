// Package cover finds what to pour instead of an ingredient that is missing, so
// that the glass stays the same. Covers are judged by the finished drink and
// not by name: the distance between what the drink carried and what it carries
// now, over ethanol, sweetness, acid, bitterness, body, volume and every aroma
// family, each in just-noticeable differences.
//
// Amounts are those that a bartender pours: steps of the jigger, dashes for
// strong things, barspoons. Every combination of one, two or three substitutes
// out of the candidates is either worked out or ruled out by a bound that no
// amount of it can beat, so the list is the same as that of an exhaustive
// search.
package cover
