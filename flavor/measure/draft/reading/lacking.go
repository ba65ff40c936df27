package reading

import (
	"errors"
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/fitting"
	"counterpour/flavor/measure/draft/names/naming"
)

// lacking tells of a name that nobody knows, and that nothing is spelt like, which kinds the drink lacks: it
// may be the name of a bottle.
func (r *Reading) lacking(f naming.Finder) {
	if r.Several || len(r.Spec.Pours) == 0 {
		return
	}
	b := naming.NewResolver(f)
	for _, fault := range r.Faults {
		if !errors.Is(fault.Kind, flavor.ErrUnknown) || (fault.Field != "ingredient" && fault.Location != "ingredient") || len(fault.Suggest) > 0 || naming.Poisons(fault.Value) {
			continue
		}
		poured := make([]*flavor.Profile, len(r.Spec.Pours))
		for i := range poured {
			poured[i] = r.Spec.Pours[i].Profile
		}
		var kinds []string
		for _, p := range fitting.Lacking(r.Spec.Name, poured, func(name string) *flavor.Profile { p, _, _ := b.Named(name); return p }) {
			if naming.Loses(fault.Value, p) == "" {
				kinds = append(kinds, p.Name)
			}
		}
		if len(kinds) == 0 {
			continue
		}
		plain, told := "such as \"London dry gin\"", fmt.Sprintf("such as %s, which drinks like this have", flavor.JoinOr(kinds))
		if !strings.Contains(fault.Message, plain) {
			continue
		}
		fault.Message = strings.Replace(fault.Message, plain, told, 1)
		fault.Suggest = kinds
	}
}
