// Package pouring tells from words how a pour goes in: the verbs before its name, "top with", and
// the tails behind it, "to float", "muddled", "cut in wedges". It knows no ingredient.
package pouring
