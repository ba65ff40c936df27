package barred_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/guest"
)

// What the trade would pour is told with what keeps it away, that which can be mended first.
func TestWays(t *testing.T) {
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	customs, err := catalogue.Customs()
	require.NoError(t, err)
	byID := func(id string) *flavor.Profile {
		p, _ := catalogue.ByID(id)
		return p
	}
	for name, c := range map[string]struct {
		drink, missing string
		guest          guest.Guest
		there          []string
		spoils         string
		want           []string
	}{
		"cream for a guest who avoids milk": {"1 1/2 oz cognac\n1 oz heavy cream\nshake, up", "heavy-cream", guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}},
			[]string{"double-cream", "oat-drink"}, "as much of it makes another drink",
			[]string{"oat cream, soy cream, coconut cream, unsweetened or coconut milk would do for heavy cream: not at hand", "double cream will not do for heavy cream: contains milk",
				"oat drink will not do for heavy cream: as much of it makes another drink"}},
		"a wine that may be cleared": {"2 oz London dry gin\n1 oz dry vermouth\nstir, up", "dry-vermouth", guest.Guest{NoAnimal: []string{flavor.Finings}},
			[]string{"fino-sherry"}, "", []string{"fino sherry would do for dry vermouth if its label clears it: may be cleared with what comes from animals unless the label, or its maker, says vegan"}},
		"kernels are asked about, and never waited for": {"2 oz amaretto\n1 oz lemon juice\nshake, rocks", "amaretto", guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}},
			[]string{"maraschino-liqueur", "creme-de-noyaux", "peanut-liqueur"}, "",
			[]string{"maraschino liqueur would do for amaretto if the guest says so", "crème de noyaux will not do for amaretto: may contain tree nuts"}},
		"nobody tells of spirits who drinks none": {"2 oz London dry gin\n4 oz tonic water\nbuild, long", "london-dry-gin", guest.Guest{NoAlcohol: true},
			[]string{"soft-dry-gin", "vodka"}, "", nil},
	} {
		t.Run(name, func(t *testing.T) {
			spec, err := catalogue.ReadSpec("", c.drink)
			require.NoError(t, err)
			there := map[string]bool{}
			for _, id := range c.there {
				there[id] = true
			}
			r := barred.Request{Spec: &spec, Missing: []*flavor.Profile{byID(c.missing)}, Guest: &c.guest, Customs: func(p *flavor.Profile) []flavor.Custom { return customs.For(p.ID) },
				ByID: byID, AtHand: func(p *flavor.Profile) bool { return there[p.ID] }, Listed: func([]*flavor.Profile) bool { return false },
				Spoils: func(_, _ *flavor.Profile) string { return c.spoils }}
			var got []string
			ways := barred.Ways(&r)
			for _, l := range barred.Lines(ways) {
				got = append(got, l.String())
			}
			for _, want := range c.want {
				assert.True(t, contains(got, want), "%q in %q", want, got)
			}
			if c.want == nil {
				assert.Empty(t, got)
			}
			for _, w := range ways {
				for _, p := range w.Parts {
					if w.Reason == barred.ByStock || w.Reason == barred.ByAsking {
						assert.True(t, c.guest.MayHave(p), "%s is named as something to fetch or to ask of", p.Name)
					}
				}
			}
			r.Listed = func([]*flavor.Profile) bool { return true }
			assert.Empty(t, barred.Ways(&r), "what a cover pours is barred by nothing")
		})
	}
}

// contains reports whether a line begins with some words.
func contains(lines []string, begins string) bool {
	for _, l := range lines {
		if len(l) >= len(begins) && l[:len(begins)] == begins {
			return true
		}
	}
	return false
}
