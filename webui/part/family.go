package part

import (
	"slices"

	"counterpour/webui/behind"
	"counterpour/webui/form"
)

// FamiliesOf returns the families of the drinks on a menu, as options.
func FamiliesOf(bar behind.Bar, menu []behind.HouseSpec, chosen string) []form.Option {
	var out []form.Option
	for _, f := range bar.Families() {
		if slices.ContainsFunc(menu, func(s behind.HouseSpec) bool { return s.Family == f.ID }) {
			out = append(out, form.Option{Value: f.ID, Name: f.Name, Chosen: f.ID == chosen})
		}
	}
	return out
}
