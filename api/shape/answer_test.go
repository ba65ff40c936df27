package shape

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/servicetest"
	"counterpour/api/wire"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

const (
	goodText     = "Halyard Sour\n2 oz gin\n3/4 oz lemon juice\n½ oz simple syrup\n2 dashes aromatic bitters\nshake, up"
	falernumSour = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	honeySour    = "2 oz gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up"
)

// TestEveryIngredientAlone scores each ingredient of the catalogue alone, in the last of
// its units. None causes an internal error.
func TestEveryIngredientAlone(t *testing.T) {
	k := servicetest.Demo(t)
	for i, p := range k.Catalogue.Profiles() {
		if testing.Short() && i%5 > 0 {
			continue
		}
		units := measure.UnitsFor(p)
		for _, u := range units[len(units)-1:] {
			a, err := AnswerScore(context.Background(), k, ScoreBody{Draft: Draft{Spec: &Spec{Pours: []Pour{{Ingredient: p.Name, Amount: 1, Unit: string(u)}}}}})
			if err != nil {
				assert.True(t, len(flavor.DataFaultsOf(err)) > 0, "%s by the %s: %v", p.ID, u, err)
				continue
			}
			assert.Equal(t, p.ID, a.Spec.Pours[0].ID)
			_, err = wire.Encode(a)
			assert.NoError(t, err, "%s by the %s", p.ID, u)
			assert.Equal(t, string(weigh.VerdictOf(a.Score)), a.Verdict, "the score and its word agree")
			assert.GreaterOrEqual(t, len(a.Templates), leastFamilies)
		}
		_, err := AnswerIngredient(k, p.ID)
		assert.NoError(t, err)
	}
}

// TestSpecsRoundTrip sends the specs of covers and fixes back; they are read as the same
// drinks.
func TestSpecsRoundTrip(t *testing.T) {
	k := servicetest.Demo(t)
	ctx := context.Background()
	text := "2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\n2 dashes bitters\n6 mint leaves\nshake, up"
	a, err := AnswerScore(ctx, k, ScoreBody{Draft: Draft{Text: &text}})
	require.NoError(t, err)
	require.NotEmpty(t, a.Fixes)
	for _, f := range a.Fixes {
		b, err := AnswerScore(ctx, k, ScoreBody{Draft: Draft{Spec: &f.Spec}})
		require.NoError(t, err)
		assert.Equal(t, f.Score, b.Score, f.Text)
	}
	c, err := AnswerCover(ctx, k, CoverBody{Draft: Draft{Text: &text}, Missing: wire.NamesOf("honey syrup"), MaxParts: 2, Limit: 10})
	require.NoError(t, err)
	require.NotEmpty(t, c.Covers)
	for _, cover := range c.Covers {
		b, err := AnswerScore(ctx, k, ScoreBody{Draft: Draft{Spec: &cover.Spec}})
		require.NoError(t, err)
		assert.Equal(t, cover.Score, b.Score, cover.Text)
		assert.Equal(t, cover.Allergens, b.Allergens)
		assert.Equal(t, a.Score, cover.ScoreBefore)
	}
}

// TestTextAndFieldsAgree checks that a drink has the same score as text and in fields.
func TestTextAndFieldsAgree(t *testing.T) {
	k := servicetest.Demo(t)
	text := goodText
	a, err := AnswerScore(context.Background(), k, ScoreBody{Draft: Draft{Text: &text}})
	require.NoError(t, err)
	spec := Spec{Name: a.Spec.Name, Method: a.Spec.Method, Service: a.Spec.Service}
	for _, p := range a.Spec.Pours {
		spec.Pours = append(spec.Pours, Pour{Ingredient: p.ID, Amount: p.Amount, Unit: p.Unit})
	}
	b, err := AnswerScore(context.Background(), k, ScoreBody{Draft: Draft{Spec: &spec}})
	require.NoError(t, err)
	assert.Equal(t, a.Finished, b.Finished)
	assert.Equal(t, a.Score, b.Score)
}

func TestAllergensNameTheirPours(t *testing.T) {
	k := servicetest.Demo(t)
	text := "2 oz gin\n1/2 oz orgeat\n3/4 oz lemon juice\n1/4 oz orgeat\n1 egg white\nshake, up"
	a, err := AnswerScore(context.Background(), k, ScoreBody{Draft: Draft{Text: &text}})
	require.NoError(t, err)
	from := map[string][]string{}
	for _, x := range a.Allergens {
		from[x.Allergen] = x.From
	}
	assert.Equal(t, []string{"orgeat"}, from["tree nuts"])
	assert.Equal(t, []string{"egg-white"}, from["eggs"])
	seen := map[string]bool{}
	for _, c := range a.Cautions {
		assert.False(t, seen[c.Key], "each caution once")
		seen[c.Key] = true
		assert.NotEmpty(t, c.Source)
	}
	assert.Equal(t, []string{"alcohol", "age", "medicines"}, []string{a.Cautions[0].Key, a.Cautions[1].Key, a.Cautions[2].Key})
}

func TestOutsOfTheHouse(t *testing.T) {
	k := servicetest.Demo(t)
	a, err := AnswerOuts(context.Background(), k, OutsBody{Out: []string{"falernum", "triple sec"}, MaxParts: 2})
	require.NoError(t, err)
	require.NotEmpty(t, a.Outs)
	assert.Equal(t, k.About.Name, a.House)
	for _, o := range a.Outs {
		for _, c := range o.Covers {
			for _, p := range c.Spec.Pours {
				assert.NotContains(t, []string{"falernum", "triple sec"}, p.Ingredient, o.Spec.Name)
			}
		}
	}
}

// A change says what was poured in its own unit, though it is mended in another.
func TestChangesUseTheUnitOfTheirPour(t *testing.T) {
	p := &flavor.Profile{ID: "salt", Name: "salt"}
	got := changeOf(balance.Change{Profile: p, From: 1, FromUnit: flavor.Teaspoon, FromML: 2.7, To: 1, Unit: flavor.Pinch, ToML: 0.1})
	assert.Equal(t, "1 tsp", got.From)
	assert.Equal(t, "1 pinch", got.To)
}
