package meaning

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/token"
)

// Some words name another fruit in one country than in the next; what else a draft writes and pours tells
// where it is from.

// grapefruits are words that name the fruit in a Spanish or French draft, and a liqueur or another
// fruit in an English one.
var grapefruits = map[string]string{"pomelo": "grapefruit juice", "pamplemousse": "grapefruit juice"}

// foreignBeside reports whether another line of a draft is written in another tongue: who writes
// English there means the word as English has it.
func (r *resolver) foreignBeside(t *counting.Task) bool {
	return slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		if o == t {
			return false
		}
		f := r.resolver.Find(o.Line.Name, naming.PlaceOf(o.Unit, o.Amount, o.Line.After))
		return f.Firm() && tongue.Foreign(o.Line.Name, f.Profile.Name)
	})
}

// fruitOf is what a word for the fruit of several countries names in the one that the draft is
// from; empty where nothing says which, or two things say another.
func (r *resolver) fruitOf(key string) string {
	means, americas, spain := tongue.Fruits(key), r.americas(key), r.spain(key)
	switch {
	case americas && !spain:
		return means[0]
	case spain && !americas:
		return means[1]
	}
	return ""
}

// americas reports whether a draft is from where a "limón" is a lime: it pours a spirit of
// those countries, beer, or a "jugo" or "suco", or blends in a "licuadora".
func (r *resolver) americas(key string) bool {
	if strings.HasPrefix(key, "jugo") || strings.HasPrefix(key, "suco") || r.says(americanWords) {
		return true
	}
	return slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		class := o.Class()
		if p, _, ok := r.resolver.Named(o.Line.Name); ok {
			class = p.Class
			if americanSpirits[p.ID] {
				return true
			}
		}
		return class == flavor.ClassAgaveSpirit || class == flavor.ClassBeer
	})
}

// spain reports whether a draft is from where a "limón" is a lemon: it says what only Spain
// calls so, or pours limes by their own name beside it.
func (r *resolver) spain(key string) bool {
	return strings.HasPrefix(key, "zumo") || strings.HasPrefix(key, "sumo") || r.says(iberianWords)
}

// says reports whether the text of a draft holds one of some keys.
func (r *resolver) says(words map[string]bool) bool {
	for w := range strings.FieldsSeq(flavor.NormaliseName(r.draft.String())) {
		if words[w] {
			return true
		}
	}
	return false
}

var (
	// americanWords and iberianWords are what one side of the ocean writes and the other does
	// not, as keys: common practice, no source.
	americanWords = token.Words(`jugo suco refresco toronja durazno frutilla licuar licuado licuadora popote abacaxi`)
	iberianWords  = token.Words(`zumo sumo melocoton nata batidora cubitera lima gaseosa cava`)
	// americanSpirits are spirits of the Americas whose class is poured everywhere.
	americanSpirits = token.Words(`pisco aromatic-pisco singani cachaca aged-cachaca`)
)
