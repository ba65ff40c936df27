// Package ratio restates a drink as equivalents, millilitres of 40 % spirit, 1:1
// syrup, fresh lemon juice, red bitter aperitif and length that carry the same, and
// compares drinks by the log-ratios of those.
//
// Equivalents form a composition (Aitchison, The Statistical Analysis of
// Compositional Data, 1986), so they are compared in an isometric log-ratio basis
// (Egozcue et al., Mathematical Geology 35:279, 2003).
package ratio
