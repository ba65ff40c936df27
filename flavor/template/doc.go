// Package template knows the families of drinks: what makes a drink a sour, a
// daisy or a highball, which ratio that family keeps, and how far proven drinks
// stray from it.
//
// A family has a published or traditional ratio as its prior centre. Proven
// drinks move it by the conjugate normal-inverse-Wishart rule (Gelman et al.,
// Bayesian Data Analysis, 3rd ed., section 3.6), so that a family with few
// drinks stays near its ratio, and the drink to be judged is held against the
// predictive Student t. Which family a drink belongs to is read from what is
// in it, not from its amounts, by a multinomial logistic rule that starts at
// the family's traditional signs and is moved by the same drinks.
package template
