// Package wording says in the words of the trade what a drink is called, how it is
// mixed and served, and what changed from one drink to another.
package wording
