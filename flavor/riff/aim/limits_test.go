package aim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor/guest"
)

// Common practice, no source: what a guest who says so does and does not mean.
func TestWhatAGuestRulesOut(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		says      string
		bars, has []string
	}{
		{"no citrus", []string{"lemon juice", "lime juice", "orange juice", "grapefruit juice", "lime cordial"},
			[]string{"London dry gin", "bourbon", "simple syrup", "apple juice"}},
		{"no smoke", []string{"mezcal", "peated single malt"}, []string{"blanco tequila", "bourbon"}},
		{"no rum", []string{"white rum", "dark rum"}, []string{"bourbon", "pisco"}},
		{"no nuts", []string{"orgeat", "hazelnut liqueur"}, []string{"honey syrup", "London dry gin"}},
		{"no dairy", []string{"heavy cream", "whole milk"}, []string{"coconut cream"}},
		{"no egg white", []string{"egg white"}, []string{"chickpea water"}},
		{"no alcohol", []string{"vodka", "triple sec"}, []string{"lime juice", "alcohol-free juniper spirit"}},
	} {
		l := b.Limits(t, guest.Guest{}, c.says)
		for _, name := range c.bars {
			assert.False(t, l.Accepts(b.Bottle(t, name)), "%s: %s", c.says, name)
		}
		for _, name := range c.has {
			assert.True(t, l.Accepts(b.Bottle(t, name)), "%s: %s", c.says, name)
		}
	}
}
