package guest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// What is certain is told before what may be, in whatever order things are poured.
func TestObjectionsTellWhatIsCertainFirst(t *testing.T) {
	of := func(name string, known bool, abv float64, marks ...flavor.AllergenMark) *flavor.Profile {
		return &flavor.Profile{ID: name, Name: name, AllergensKnown: known, ABV: flavor.Figure{Value: abv}, AllergenMarks: marks}
	}
	var (
		holds    = of("holds", true, 0, flavor.AllergenMark{Allergen: flavor.Celery, Certainty: flavor.Contains})
		may      = of("may", false, 0, flavor.AllergenMark{Allergen: flavor.Celery, Certainty: flavor.MayContain})
		unstated = of("unstated", false, 0)
		unread   = &flavor.Profile{ID: "unread", Name: "unread", Unread: true}
		strong   = of("strong", false, 40)
		free     = of("free", true, 0)
	)
	celery := Guest{Avoid: []flavor.Allergen{flavor.Celery}}
	for _, c := range []struct {
		guest Guest
		of    []*flavor.Profile
		want  []*flavor.Profile
	}{
		{celery, []*flavor.Profile{unstated, free, may, holds, unstated}, []*flavor.Profile{holds, may, unstated}},
		{celery, []*flavor.Profile{unread, unstated, holds, may}, []*flavor.Profile{holds, may, unread, unstated}},
		{Guest{Avoid: celery.Avoid, MaxCost: 1}, []*flavor.Profile{unstated, may, holds}, []*flavor.Profile{holds, may, unstated}},
		{Guest{Avoid: celery.Avoid, NoAlcohol: true}, []*flavor.Profile{unstated, unread, may, strong}, []*flavor.Profile{strong, may, unstated, unread}},
		{celery, []*flavor.Profile{free}, nil},
	} {
		var got []*flavor.Profile
		for _, o := range c.guest.Objections(c.of) {
			got = append(got, o.Profile)
			assert.Equal(t, c.guest.Objection(o.Profile), o.Why)
		}
		assert.Equal(t, c.want, got, "%+v", c.guest)
	}
}
