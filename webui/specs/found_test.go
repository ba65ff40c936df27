package specs

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/webui/behind"
)

// The count claims a word only for the drinks that have it.
func TestFoundClaimsNoWordThatIsNotThere(t *testing.T) {
	named := func(names ...string) (out []behind.HouseSpec) {
		for _, n := range names {
			out = append(out, behind.HouseSpec{Spec: flavor.Spec{Name: n}})
		}
		return out
	}
	for want, c := range map[string]struct {
		text  string
		found []behind.HouseSpec
	}{
		"3 specs":                 {"", named("A", "B", "C")},
		"2 of 3 specs":            {"", named("A", "B")},
		"1 of 3 specs with “fog”": {"fog", named("Fog Trail")},
		"None of 3 specs with “trial”; 1 near to it":  {"trial", named("Fog Trail")},
		"1 of 3 specs with “trail”, and 1 near to it": {"trail", named("Fog Trail", "Trial Sour")},
	} {
		assert.Equal(t, want, foundOf(c.text, c.found, 3))
	}
}
