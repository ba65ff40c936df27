// Package template knows the families of drinks: what makes a drink a sour, a
// daisy or a highball, which ratio that family keeps, and how far proven drinks
// stray from it.
//
// A drink is restated as equivalents: millilitres of 40 % spirit, 1:1 syrup,
// fresh lemon juice, red bitter aperitif and length that carry the same. They
// form a composition, so they are compared as log-ratios (Aitchison, The
// Statistical Analysis of Compositional Data, 1986) in an isometric basis
// (Egozcue et al., Mathematical Geology 35:279, 2003).
//
// A family has a published or traditional ratio as its prior centre. Proven
// drinks move it by the conjugate normal-inverse-Wishart rule (Gelman et al.,
// Bayesian Data Analysis, 3rd ed., section 3.6), so that a family with few
// drinks stays near its ratio, and the drink to be judged is held against the
// predictive Student t. Which family a drink belongs to is read from what is
// in it, not from its amounts, by a multinomial logistic rule that starts at
// the family's traditional signs and is moved by the same drinks.
//
// What is wrong with a drink is weighed, not measured: a ratio cannot tell too
// much of one part from too little of the others, so for every axis the
// package asks how probable it is that this axis alone slipped in an otherwise
// good drink of its make-up, by its ratio and its usual size (see Pull).
// Detail lays the arithmetic of a score open, and WithPalate moves the centres
// to the taste of a house.
package template
