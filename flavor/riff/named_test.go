package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor/riff/wording"
)

// A riff comes with a working name that says what it came from and what changed.
func TestRiffsHaveAWorkingName(t *testing.T) {
	b := bartest.New(t)
	for i := 0; i < len(b.Proven); i += 40 {
		s := b.Proven[i].Spec
		res, err := Vary(context.Background(), b.Station, Request{Spec: &s, Limit: 5, Stock: bartest.With(b.Some(0, 2), &s)})
		require.NoError(t, err)
		for _, x := range res.Riffs {
			require.NotEmpty(t, x.Spec.Name)
			assert.Contains(t, x.Spec.Name, s.Name)
			assert.Greater(t, len(x.Spec.Name), len(s.Name))
		}
	}
}

func TestWorkingName(t *testing.T) {
	b := bartest.New(t)
	from := b.Spec(t, "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	from.Name = "Halyard"
	for _, c := range []struct{ text, want string }{
		{"2 oz vodka\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "Halyard, vodka for London dry gin"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n2 dashes orange bitters\nshake, up", "Halyard with orange bitters"},
		{"2 oz gin\n3/4 oz lemon juice\nshake, up", "Halyard without simple syrup"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, rocks", "Halyard, on the rocks"},
		{"2 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up", "Halyard, other measures"},
	} {
		s := b.Spec(t, c.text)
		assert.Equal(t, c.want, wording.WorkingName(from, s, wording.Changes(from, s)))
	}
	from.Name = ""
	s := b.Spec(t, "2 oz mezcal\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	assert.Empty(t, wording.WorkingName(from, s, wording.Changes(from, s)))
}
