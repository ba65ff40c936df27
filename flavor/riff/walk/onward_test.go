package walk

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
)

// From a sour to a stirred drink the juice goes before the vermouth comes: no stop pours
// both. Common practice, no source.
func TestJuiceGoesBeforeVermouthComes(t *testing.T) {
	b := bartest.New(t)
	for _, base := range []string{"bourbon", "gin"} {
		sour, stirred := b.Spec(t, "2 oz "+base+"\n1 oz lemon juice\n3/4 oz simple syrup\nshake, rocks"), b.Spec(t, "2 oz "+base+"\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up")
		for _, way := range [][2]*flavor.Spec{{sour, stirred}, {stirred, sour}} {
			found, err := Find(context.Background(), b.Station, Request{From: way[0], To: way[1]})
			require.NoError(t, err)
			for _, s := range found.Stops {
				assert.False(t, s.Spec.Has(sours) && s.Spec.Has(wine), s.Text)
			}
		}
	}
}

// A proven drink on the way is served as an end is, on a spirit that an end pours.
func TestABridgeIsOfTheirKind(t *testing.T) {
	b := bartest.New(t)
	from, to := b.Spec(t, "1 3/4 oz gin\n4 oz tonic water\nbuild, long"), b.Spec(t, "1 3/4 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n3 oz soda water\nbuild, long")
	found, err := Find(context.Background(), b.Station, Request{From: from, To: to, Stock: b.Catalogue.Profiles()})
	require.NoError(t, err)
	require.Len(t, found.Stops, DefaultSteps+2)
	for _, s := range found.Stops {
		assert.Equal(t, flavor.Long, s.Spec.Service, s.Text)
		for _, p := range s.Spec.Pours {
			assert.True(t, !p.Profile.Base() || p.Profile.Class == flavor.ClassGin, s.Text)
		}
	}
}
