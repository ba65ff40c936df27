package measure

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

func TestFormatAmount(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   flavor.Unit
		want   string
	}{
		{0.75, flavor.Ounce, "¾ oz"},
		{0.75 + 1e-9, flavor.Ounce, "¾ oz"},
		{1.5, flavor.Ounce, "1½ oz"},
		{0.125, flavor.Ounce, "⅛ oz"},
		{1.0 / 3, flavor.Ounce, "⅓ oz"},
		{0.33, flavor.Ounce, "0.33 oz"},
		{2, flavor.Ounce, "2 oz"},
		{1.9999999, flavor.Ounce, "2 oz"},
		{2.015, flavor.Ounce, "2.02 oz"},
		{22.5, flavor.Millilitre, "22.5 ml"},
		{0.5, flavor.Millilitre, "0.5 ml"},
		{2.25, flavor.Centilitre, "2.25 cl"},
		{1, flavor.Dash, "1 dash"},
		{1.00000001, flavor.Dash, "1 dash"},
		{2, flavor.Dash, "2 dashes"},
		{0.5, flavor.Barspoon, "½ barspoon"},
		{1.5, flavor.Barspoon, "1½ barspoons"},
		{6, flavor.Leaf, "6 leaves"},
		{1, flavor.Top, "top"},
		{2, flavor.PartUnit, "2 parts"},
		{4.2, flavor.Gram, "4.2 g"},
		{0.00123, flavor.Millilitre, "0.0012 ml"},
		{2, "", "2"},
		{2, "bucket", "2 bucket"},
	} {
		assert.Equal(t, c.want, FormatAmount(c.amount, c.unit))
	}
	assert.NotPanics(t, func() {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300} {
			FormatAmount(v, flavor.Ounce)
		}
	})
}

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
	s, err := resolveText(t, text)
	require.NoError(t, err)
	assert.Equal(t, text, Format(s))
	assert.Equal(t, "stir\n", Format(flavor.Spec{Method: flavor.Stir}))
	assert.Equal(t, "2 thing\n", Format(flavor.Spec{Pours: []flavor.Pour{{Amount: 2, Match: flavor.Match{Asked: "thing"}}}}))
}

// odd names read as something else unless they are marked.
var oddNames = []string{"", "Halyard Sour", "2 oz gin", "-2 oz gin", "12 Mile Limit", "Two Hoots", "# hash", "- dash",
	"name: x", "shake, up", "Top Hat", "1/0 oz x", "two\nlines", "1 lime", "½", "\u200bghost", "tab\tbed", "a dash of luck"}

// What Format writes, Parse and Resolve read as the same spec.
func TestFormatRoundTrip(t *testing.T) {
	b := bar()
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
		d, err := Parse(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		got, err := Resolve(d, b)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if got.Name != oneLine(s.Name) || got.Method != s.Method || got.Service != s.Service || len(got.Pours) != len(s.Pours) {
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
	u := rapid.SampledFrom(UnitsFor(p)).Draw(t, "unit")
	info, _ := infoOf(u)
	amount := rapid.OneOf(
		rapid.Map(rapid.IntRange(1, 40), func(n int) float64 { return float64(n) / 4 }),
		rapid.Map(rapid.IntRange(1, 20), func(n int) float64 { return float64(n) / 3 }),
		rapid.Float64Range(MinAmount, info.most),
	).Draw(t, "amount")
	amount = math.Min(amount, info.most)
	ml, err := ToML(amount, u, p)
	if err != nil || ml > MaxPourML {
		amount = 1
		ml, _ = ToML(amount, u, p)
	}
	return flavor.Pour{Profile: p, Amount: amount, Unit: u, ML: ml}
}

// FormatAmount reads back within its own rounding.
func TestFormatAmountReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(Units()).Draw(t, "unit")
		amount := rapid.Float64Range(0.01, 99).Draw(t, "amount")
		if u == flavor.Top {
			return
		}
		a, _, fault := readAmount(FormatAmount(amount, u))
		if fault != nil || a == nil || math.Abs(a.value-amount) > 0.0051 {
			t.Fatalf("%v %s is written %q", amount, u, FormatAmount(amount, u))
		}
	})
}
