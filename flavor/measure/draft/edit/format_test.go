package edit

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/onedrink"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/words/token"
)

func TestFormat(t *testing.T) {
	const text = `Halyard Sour
2 oz London dry gin
¾ oz Lemon juice
½ oz Simple syrup (1:1)
2 dashes Aromatic bitters
6 Mint leaves
1 Egg white
1 leaf Bay leaf
top Soda water
shake, long
`
	s, err := reading.Read(text, drafttest.Bar())
	require.NoError(t, err)
	assert.Equal(t, text, Format(s))
	assert.Equal(t, "stir\n", Format(flavor.Spec{Method: flavor.Stir}))
	assert.Equal(t, "2 thing\n", Format(flavor.Spec{Pours: []flavor.Pour{{Amount: 2, Match: flavor.Match{Asked: "thing"}}}}))
}

// odd names read as something else unless they are marked.
var oddNames = []string{"", "Halyard Sour", "2 oz gin", "-2 oz gin", "12 Mile Limit", "Two Hoots", "# hash", "- dash",
	"name: x", "shake, up", "Top Hat", "1/0 oz x", "two\nlines", "1 lime", "½", "\u200bghost", "tab\tbed", "a dash of luck", "A:"}

// What Format writes, Parse and Resolve read as the same spec.
func TestFormatRoundTrip(t *testing.T) {
	b := drafttest.Bar()
	var profiles []*flavor.Profile
	for _, p := range b {
		if !slices.Contains(profiles, p) {
			profiles = append(profiles, p)
		}
	}
	slices.SortFunc(profiles, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	rapid.Check(t, func(t *rapid.T) {
		s := flavor.Spec{
			Name:   rapid.OneOf(rapid.SampledFrom(oddNames), rapid.StringN(0, 40, 120)).Draw(t, "name"),
			Method: rapid.SampledFrom(flavor.Methods()).Draw(t, "method"), Service: rapid.SampledFrom(flavor.Services()).Draw(t, "service")}
		for range rapid.IntRange(1, 8).Draw(t, "pours") {
			s.Pours = append(s.Pours, drawPour(t, profiles))
		}
		text := Format(s)
		got, err := reading.Read(text, b)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if got.Name != token.OneLine(s.Name) || got.Method != s.Method || got.Service != s.Service || len(got.Pours) != len(s.Pours) {
			t.Fatalf("read back as %+v from\n%s", got, text)
		}
		for i, p := range got.Pours {
			w := s.Pours[i]
			if p.Profile != w.Profile || p.Amount != w.Amount || p.Unit != w.Unit || p.ML != w.ML {
				t.Fatalf("pour %d read back as %v %s %s from\n%s", i, p.Amount, p.Unit, p.Profile.Name, text)
			}
		}
		if again := Format(got); again != text {
			t.Fatalf("written again:\n%s\nnot\n%s", again, text)
		}
	})
}

func drawPour(t *rapid.T, profiles []*flavor.Profile) flavor.Pour {
	p := rapid.SampledFrom(profiles).Draw(t, "profile")
	u := rapid.SampledFrom(measure.UnitsFor(p)).Draw(t, "unit")
	most := measure.MostOf(u)
	amount := rapid.OneOf(
		rapid.Map(rapid.IntRange(1, 40), func(n int) float64 { return float64(n) / 4 }),
		rapid.Map(rapid.IntRange(1, 20), func(n int) float64 { return float64(n) / 3 }),
		rapid.Float64Range(measure.MinAmount, most),
	).Draw(t, "amount")
	amount = math.Min(amount, most)
	ml, err := measure.ToML(amount, u, p)
	if err != nil || ml > onedrink.MostInScaleML {
		amount = 1
		ml, _ = measure.ToML(amount, u, p)
	}
	return flavor.Pour{Profile: p, Amount: amount, Unit: u, ML: ml}
}
