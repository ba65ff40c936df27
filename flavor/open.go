package flavor

import "slices"

// Open lists the allergens of which nobody has stated whether the ingredient carries them,
// in the order of the Annex; none where all is known.
func (p *Profile) Open() []Allergen {
	return slices.DeleteFunc(Allergens(), func(a Allergen) bool {
		c, _ := p.Allergen(a)
		return c != Unstated
	})
}

// OpenWords names allergens that nobody has stated, for a reader who is told of those on
// record beside them: "celery or mustard", or, where that is shorter, "any allergen but
// milk". It claims nothing of what the record clears. Empty if none is open.
func OpenWords(open, onRecord []Allergen) string {
	if len(open) == 0 {
		return ""
	}
	var cleared []Allergen
	for _, a := range Allergens() {
		if !slices.Contains(open, a) && !slices.Contains(onRecord, a) {
			cleared = append(cleared, a)
		}
	}
	any := "any allergen"
	if len(onRecord) > 0 {
		any = "any other allergen"
	}
	switch {
	case len(cleared) == 0:
		return any
	case len(cleared) < len(open):
		return any + " but " + JoinAnd(wordsOf(cleared))
	}
	return JoinOr(wordsOf(open))
}

func wordsOf(list []Allergen) []string {
	out := make([]string, len(list))
	for i, a := range list {
		out[i] = string(a)
	}
	return out
}
