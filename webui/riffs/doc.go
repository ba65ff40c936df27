// Package riffs is the pages of what else a drink could become: riffs on a draft,
// drafts that use bottles up, and walks from one drink to another. They write
// nothing.
package riffs
