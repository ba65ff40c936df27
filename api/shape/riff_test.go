package shape

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/servicetest"
	"counterpour/flavor"
)

// No list contains anything made of nuts, judged by the records and not only by names.
func TestNoNutInAnyAnswer(t *testing.T) {
	k := servicetest.Demo(t)
	free := func(specs ...Spec) {
		t.Helper()
		for _, s := range specs {
			read, err := k.Read(Draft{Spec: &s}.ToCentre())
			require.NoError(t, err)
			for _, p := range read.Pours {
				assert.True(t, p.Profile.Avoids([]flavor.Allergen{flavor.TreeNuts}), p.Profile.Name)
			}
		}
	}
	all := make([]string, 0, len(k.Catalogue.Profiles()))
	for _, p := range k.Catalogue.Profiles() {
		all = append(all, p.ID)
	}
	avoid := []string{"tree nuts"} // that no seed lets one in is for flavor/riff to show
	for _, text := range []string{falernumSour, honeySour} {
		a, err := AnswerRiff(context.Background(), k, RiffBody{Draft: Draft{Text: &text}, Search: Search{Avoid: avoid, Toward: []string{"nuttier"}, Stock: all, Limit: 20}})
		require.NoError(t, err)
		for _, r := range a.Riffs {
			free(r.Spec)
			assert.NotContains(t, r.NewAllergens, "tree nuts")
		}
		for _, r := range a.Relatives {
			at := -1
			for i := range k.Proven {
				if k.Proven[i].Spec.Name == r.Name {
					at = i
				}
			}
			require.GreaterOrEqual(t, at, 0)
			for _, p := range k.Proven[at].Spec.Pours {
				assert.True(t, p.Profile.Avoids([]flavor.Allergen{flavor.TreeNuts}), "%s: %s", r.Name, p.Profile.Name)
			}
		}
	}
	u, err := AnswerUseUp(context.Background(), k, UseUpBody{Bottles: []string{"orgeat", "amaretto", "apricot liqueur", "rum"}, Search: Search{Avoid: avoid, Stock: all, Limit: 20}})
	require.NoError(t, err)
	require.NotEmpty(t, u.Drafts)
	for _, d := range u.Drafts {
		free(d.Spec)
	}
	require.GreaterOrEqual(t, len(u.Unused), 2)
	for _, x := range u.Unused[:2] {
		assert.Equal(t, "guest", x.Why, x.Name)
	}
}
