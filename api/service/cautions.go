package service

import (
	"slices"

	"counterpour/data"
	"counterpour/flavor"
)

// generalCautions go with every drink that holds alcohol.
var generalCautions = []string{"alcohol", "age", "medicines"}

// IsGeneralCaution reports whether a caution goes with every drink that holds
// alcohol, whatever else is in it.
func IsGeneralCaution(key string) bool { return slices.Contains(generalCautions, key) }

// AlcoholCautions returns the cautions that go with every drink that holds
// alcohol.
func (k *Kitchen) AlcoholCautions() []data.Caution { return k.Cautions(generalCautions) }

// CautionsOf returns the cautions of the pours of some specs, in their order and
// each once; those of alcohol in general are not among them.
func (k *Kitchen) CautionsOf(specs ...*flavor.Spec) []data.Caution {
	return k.Cautions(k.pouredCautions(specs))
}

// AllCautions returns the cautions of alcohol in general, if there is any in
// the glass, then those of the pours of some specs, each once.
func (k *Kitchen) AllCautions(alcohol bool, specs ...*flavor.Spec) []data.Caution {
	keys := k.pouredCautions(specs)
	if alcohol {
		keys = slices.Concat(generalCautions, keys)
	}
	return k.Cautions(keys)
}

func (k *Kitchen) pouredCautions(specs []*flavor.Spec) (keys []string) {
	for _, s := range specs {
		keys = append(keys, k.Catalogue.CautionsOf(s)...)
	}
	return keys
}

// Cautions returns the cautions with the keys, each once; one that the
// catalogue does not know is left out.
func (k *Kitchen) Cautions(keys []string) []data.Caution {
	var out []data.Caution
	for i, key := range keys {
		if slices.Contains(keys[:i], key) {
			continue
		}
		if c, ok := k.Catalogue.Caution(key); ok {
			out = append(out, c)
		}
	}
	return out
}
