package form

import "slices"

// Options are words to choose from, each its own name.
func Options(words []string, chosen ...string) []Option {
	out := make([]Option, len(words))
	for i, w := range words {
		out[i] = Option{w, w, slices.Contains(chosen, w)}
	}
	return out
}

// Choose marks the one that was chosen, else the first.
func Choose(all []Option, chosen string) []Option {
	out := append([]Option(nil), all...)
	at := 0
	for i := range out {
		if out[i].Value == chosen {
			at = i
		}
	}
	out[at].Chosen = true
	return out
}

// Option is an entry of a list to choose from.
type Option struct {
	Value, Name string
	Chosen      bool
}
