package trial

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/balance"
)

// A fix undoes a mischief only if it goes the other way, with what was poured.
func TestUndoes(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Class: flavor.ClassGin}
	rum := &flavor.Profile{ID: "rum", Class: flavor.ClassRum}
	absinthe := &flavor.Profile{ID: "absinthe", Class: flavor.ClassAniseSpirit}
	vermouth := &flavor.Profile{ID: "vermouth", Class: flavor.ClassVermouth} // a modifier, as absinthe is
	drink := &flavor.Spec{Method: flavor.Shake, Pours: []flavor.Pour{{Profile: gin}, {Profile: absinthe}, {Profile: vermouth}}}
	change := func(p *flavor.Profile, from, to float64) *balance.Fix {
		return &balance.Fix{Spec: *drink, Changes: []balance.Change{{Profile: p, FromML: from, ToML: to}}}
	}
	stirred := drink.Clone()
	stirred.Method = flavor.Stir
	topped := drink.Clone()
	topped.Pours[2].After = true
	for _, c := range []struct {
		what string
		fix  *balance.Fix
		by   *flavor.Profile // nil: the method
		want bool
	}{
		{"left out", change(absinthe, 15, 0), absinthe, true},
		{"less of it", change(absinthe, 15, 5), absinthe, true},
		{"more of it", change(absinthe, 15, 30), absinthe, false},
		{"less of another modifier", change(vermouth, 30, 0), absinthe, false},
		{"less of another base", change(rum, 60, 30), gin, true},
		{"more of the base", change(gin, 60, 75), gin, false},
		{"the base that is missing", change(gin, 0, 45), rum, true},
		{"another modifier for the base that is missing", change(vermouth, 0, 45), rum, false},
		{"the method, where a pour is to blame", &balance.Fix{Spec: stirred}, absinthe, false},
		{"the method", &balance.Fix{Spec: stirred}, nil, true},
		{"one pour after the others", &balance.Fix{Spec: topped}, nil, true},
		{"a pour, where the method is to blame", change(absinthe, 15, 0), nil, false},
	} {
		assert.Equal(t, c.want, undoes(c.fix, drink, c.by), c.what)
	}
}
