package literal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/literal"
	"counterpour/flavor/measure/draft/words/entry"
)

func TestWritten(t *testing.T) {
	for _, c := range []struct {
		text string
		want bool
	}{
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", true},
		{"60 ml gin\n2 dash orange bitters\nstir\nup", true},
		{"1 1/2 oz rye whiskey\nstir, rocks\n", true},
		{"2 oz gin, 1 oz lime juice\nshake, up", false},           // parted by a comma
		{"Bow Spring\n2 oz gin\nstir, up", false},                 // a name may say more
		{"2 gin\n1 oz lime juice\nshake, up", false},              // no unit
		{"gin 2 oz\nstir, up", false},                             // behind the name
		{"2 oz gin\nstir", false},                                 // no service
		{"2 oz gin\n\n1 oz vodka\nstir, up", false},               // two lists, perhaps
		{"2 oz gin\nstir, up # no nuts", false},                   // a remark
		{"2 oz gin\nstir gently, up", false},                      // a word beside the method
		{"2 oz gin\nstir, up\ngarnish: toasted hazelnuts", false}, // something laid on it
		{"two oz gin\nstir, up", false},                           // in words
		{"2 oz gin\n1 oz each lime juice, orgeat\nshake, up", false},
		{"top soda water\n2 oz gin\nbuild, long", false},
	} {
		d := draft.Parse(c.text)
		assert.Equal(t, c.want, literal.Written(&d), c.text)
	}
}

func TestPoured(t *testing.T) {
	gin := flavor.Pour{Profile: &flavor.Profile{Name: "London dry gin"}}
	inferred := flavor.Pour{Profile: gin.Profile, Match: flavor.Match{Inferred: []string{flavor.InferredName}}}
	named := func(name string) (*flavor.Profile, flavor.MatchHow, bool) {
		return gin.Profile, flavor.MatchAlias, name != "gni"
	}
	for _, c := range []struct {
		written string
		spec    flavor.Spec
		want    bool
	}{
		{"gin", flavor.Spec{Pours: []flavor.Pour{gin}}, true},
		{"London dry gin", flavor.Spec{Pours: []flavor.Pour{gin}}, true},
		{"gin (almond-washed)", flavor.Spec{Pours: []flavor.Pour{gin}}, false}, // more than its name
		{"gni", flavor.Spec{Pours: []flavor.Pour{gin}}, false},                 // a slip
		{"gin", flavor.Spec{Pours: []flavor.Pour{gin, gin}}, false},            // not all of it was written
		{"gin", flavor.Spec{}, false},                                          // a pour is gone
		{"gin", flavor.Spec{Pours: []flavor.Pour{inferred}}, false},
		{"gin", flavor.Spec{Pours: []flavor.Pour{gin}, Notes: []string{"something is said"}}, false},
	} {
		assert.Equal(t, c.want, literal.Poured(&c.spec, []entry.Line{{Name: c.written}}, named), c.written)
	}
}
