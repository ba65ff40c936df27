// Package declared knows how a card or a label declares what is in a bottle: that it has no
// alcohol, and which allergens it carries.
package declared
