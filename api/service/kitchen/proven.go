package kitchen

import "counterpour/flavor"

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
