package trial

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// Each outcome is told from the others; a misreading is silent as soon as one pour
// that is not meant bears no mark, or one that is meant is missing.
func TestTryDrafts(t *testing.T) {
	pour := func(id string, ml float64, m flavor.Match) flavor.Pour {
		return flavor.Pour{Profile: &flavor.Profile{ID: id, Name: id}, ML: ml, Match: m}
	}
	exact, told, slip := flavor.Match{How: flavor.MatchExact}, flavor.Match{How: flavor.MatchExact, Inferred: []string{flavor.InferredUnit}}, flavor.Match{How: flavor.MatchFuzzy}
	gin := []Poured{{ID: "gin", ML: 60, Tolerance: 3}}
	for name, c := range map[string]struct {
		wanted []Poured
		read   []flavor.Pour
		err    error
		want   ReadAs
	}{
		"as meant":              {gin, []flavor.Pour{pour("gin", 59, exact)}, nil, ReadRight},
		"any amount":            {[]Poured{{ID: "soda"}}, []flavor.Pour{pour("soda", 90, exact)}, nil, ReadRight},
		"refused":               {gin, nil, errors.New("no"), ReadRefused},
		"asked, as it should":   {nil, nil, errors.New("no"), ReadRight},
		"read, and none can":    {nil, []flavor.Pour{pour("gin", 60, exact)}, nil, MisreadSilent},
		"another amount":        {gin, []flavor.Pour{pour("gin", 50, exact)}, nil, MisreadSilent},
		"another amount, told":  {gin, []flavor.Pour{pour("gin", 50, told)}, nil, MisreadTold},
		"another thing":         {gin, []flavor.Pour{pour("rum", 60, exact)}, nil, MisreadSilent},
		"another thing, a slip": {gin, []flavor.Pour{pour("rum", 60, slip)}, nil, MisreadTold},
		"one more, silently":    {gin, []flavor.Pour{pour("gin", 60, exact), pour("rum", 60, exact)}, nil, MisreadSilent},
		"one told, one not":     {gin, []flavor.Pour{pour("rum", 60, told), pour("tea", 60, exact)}, nil, MisreadSilent},
		"one missing":           {append(gin[:1:1], Poured{ID: "tea"}), []flavor.Pour{pour("gin", 60, exact)}, nil, MisreadSilent},
	} {
		r := TryDrafts([]Typed{{Hand: "a", Pours: c.wanted}}, func(string) (flavor.Spec, error) { return flavor.Spec{Pours: c.read}, c.err })
		assert.Equal(t, map[ReadAs]int{c.want: 1}, r.Total().Became, name)
		assert.Equal(t, c.want == ReadRight, len(r.Misses) == 0, name)
	}
}
