package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft"
	"counterpour/webui/bench"
	"counterpour/webui/webuitest"
)

func TestSizes(t *testing.T) {
	for _, c := range []struct {
		name, text, size, want string
	}{
		{"doubled", "# mine\n1 1/2 oz gin\n1 egg white\nshake", "Two of it", "# mine\n3 oz gin\n2 egg white\nshake"},
		{"halved", "2 oz gin\n1 oz lemon juice\nstir", "Halve it", "1 oz gin\n½ oz lemon juice\nstir"},
		{"to metric", "2 oz gin\n1/4 oz lemon juice\nshake", "In mL", "60 ml gin\n7.5 ml lemon juice\nshake"},
		{"centilitres to metric", "6 cl gin\n2.25 cl lemon juice\nshake", "In mL", "60 ml gin\n22.5 ml lemon juice\nshake"},
		{"centilitres to ounces", "6 cl gin\n2.25 cl lemon juice\nshake", "In oz", "2 oz gin\n¾ oz lemon juice\nshake"},
		{"to ounces", "60 ml gin\n22.5 ml lemon juice\nshake", "In oz", "2 oz gin\n¾ oz lemon juice\nshake"},
	} {
		s, err := webuitest.Bar{}.Read(c.text)
		require.NoError(t, err, c.name)
		found := false
		for _, v := range bench.SizesOf(c.text, &s) {
			if v.Name == c.size {
				assert.Equal(t, c.want, v.Draft, c.name)
				found = true
			}
		}
		assert.True(t, found, c.name)
	}
}

// Whatever is offered reads back as a draft.
func TestSizesReadBack(t *testing.T) {
	for _, text := range []string{webuitest.GoodDraft, webuitest.NutDraft, "45 ml gin\ntop lemon juice\nbuild, long"} {
		s, err := webuitest.Bar{}.Read(text)
		require.NoError(t, err)
		for _, v := range bench.SizesOf(text, &s) {
			assert.NoError(t, draft.Parse(v.Draft).Err(), "%s: %q", v.Name, v.Draft)
		}
	}
}
