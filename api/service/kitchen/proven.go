package kitchen

import (
	"counterpour/flavor"
	"counterpour/flavor/cover/sister"
)

// ProvenCalled returns the proven drink that has a name, nil if none has. Of several, that
// comes which guests ask for by its name today, else the first.
func (k *Kitchen) ProvenCalled(name string) *flavor.Spec {
	key := flavor.NormaliseName(name)
	if key == "" {
		return nil
	}
	var found *flavor.Spec
	for i := range k.Proven {
		d := &k.Proven[i]
		if flavor.NormaliseName(d.Spec.Name) != key {
			continue
		}
		if d.Current {
			return &d.Spec
		}
		if found == nil {
			found = &d.Spec
		}
	}
	return found
}

// sisters lists the proven drinks, as a cover may make one of another.
func (k *Kitchen) sisters() []sister.Drink {
	out := make([]sister.Drink, len(k.Proven))
	for i := range k.Proven {
		out[i] = sister.Drink{Spec: &k.Proven[i].Spec, Current: k.Proven[i].Current}
	}
	return out
}
