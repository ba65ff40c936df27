package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/bench"
	"counterpour/webui/webuitest"
)

func TestRewriteKeepsWhatNeedNotChange(t *testing.T) {
	pour := func(p *flavor.Profile, amount float64) flavor.Pour {
		return flavor.Pour{Profile: p, Amount: amount, Unit: flavor.Ounce, ML: amount * 29.57}
	}
	for _, c := range []struct {
		name, text, want string
		change           func(s *flavor.Spec)
	}{
		{"one pour moved", "My Sour\n- 2 oz gin\n# fresh!\n1/4 oz lemon juice\n\nshake", "My Sour\n- 2 oz gin\n# fresh!\n¾ oz lemon juice\n\nshake",
			func(s *flavor.Spec) { s.Pours[1] = pour(webuitest.Lemon, 0.75) }},
		{"one pour added", "2 oz gin\n1 oz lemon juice\nshake, up", "2 oz gin\n1 oz lemon juice\n½ oz simple syrup\nshake, up",
			func(s *flavor.Spec) { s.Pours = append(s.Pours, pour(webuitest.Syrup, 0.5)) }},
		{"one replaced by two", "2 oz gin\n1 oz orgeat\n1 oz lemon juice\nshake", "2 oz gin\n½ oz sesame orgeat\n¼ oz simple syrup\n1 oz lemon juice\nshake",
			func(s *flavor.Spec) {
				s.Pours = []flavor.Pour{s.Pours[0], pour(webuitest.Sesame, 0.5), pour(webuitest.Syrup, 0.25), s.Pours[2]}
			}},
		{"the last replaced", "2 oz gin\n1 oz orgeat", "2 oz gin\n½ oz sesame orgeat", func(s *flavor.Spec) { s.Pours[1] = pour(webuitest.Sesame, 0.5) }},
		{"one left out", "2 oz gin\n1 oz orgeat\n1 egg white\nshake", "2 oz gin\n1 egg white\nshake",
			func(s *flavor.Spec) { s.Pours = []flavor.Pour{s.Pours[0], s.Pours[2]} }},
		{"everything replaced", "2 oz gin", "1 oz lemon juice", func(s *flavor.Spec) { s.Pours = []flavor.Pour{pour(webuitest.Lemon, 1)} }},
	} {
		t.Run(c.name, func(t *testing.T) {
			from, err := webuitest.Bar{}.Read(c.text)
			require.NoError(t, err)
			to := from.Clone()
			c.change(&to)
			got := bench.Rewrite(c.text, &from, &to)
			assert.Equal(t, c.want, got)
			back, err := webuitest.Bar{}.Read(got)
			require.NoError(t, err)
			require.Len(t, back.Pours, len(to.Pours))
			for i := range to.Pours {
				assert.Equal(t, to.Pours[i].Profile.ID, back.Pours[i].Profile.ID)
				assert.Equal(t, to.Pours[i].Amount, back.Pours[i].Amount)
			}
		})
	}
}

func TestRewriteFallsBackToAFreshDraft(t *testing.T) {
	s, err := webuitest.Bar{}.Read(webuitest.GoodDraft)
	require.NoError(t, err)
	assert.Equal(t, edit.Format(s), bench.Rewrite("this is not that draft", &s, &s))
}
