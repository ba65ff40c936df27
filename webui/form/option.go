package form

import "slices"

// Options turns words into options, each with the word as its name.
func Options(words []string, chosen ...string) []Option {
	out := make([]Option, len(words))
	for i, w := range words {
		out[i] = Option{w, w, slices.Contains(chosen, w)}
	}
	return out
}

// Choose marks the option with the chosen value, otherwise the first.
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

// Option is an entry of a select element.
type Option struct {
	Value, Name string
	Chosen      bool
}
