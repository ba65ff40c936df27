// Package laid tells from words what is laid on a drink rather than poured into it: peels, slices,
// herbs, berries. It knows no ingredient.
package laid
