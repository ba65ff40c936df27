// Package edit writes drafts: a spec as text, and the text of a draft changed so
// that every word that need not change stays.
package edit
