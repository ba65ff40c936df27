package sense_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// toy is a small table: two citrus oils that share most, a mint and a root.
func toy() *sense.Table {
	return &sense.Table{
		Notes: []sense.Note{{ID: "lemon", Family: flavor.Citrus}, {ID: "orange peel", Family: flavor.Orange},
			{ID: "mint", Family: flavor.Mint}, {ID: "earth", Family: flavor.Root}},
		Odorants: []sense.Odorant{
			{Name: "citral", Character: []sense.Share{{Name: "lemon", Weight: 1}}},
			{Name: "limonene", Character: []sense.Share{{Name: "lemon", Weight: 0.5}, {Name: "orange peel", Weight: 0.5}}},
			{Name: "octanal", Character: []sense.Share{{Name: "orange peel", Weight: 1}}},
			{Name: "menthol", Character: []sense.Share{{Name: "mint", Weight: 1}}},
			{Name: "geosmin", Character: []sense.Share{{Name: "earth", Weight: 1}}},
		},
		Materials: []sense.Material{
			{Name: "lemon", Odorants: []sense.Share{{Name: "citral", Weight: 1}, {Name: "limonene", Weight: 0.6}}},
			{Name: "orange", Odorants: []sense.Share{{Name: "octanal", Weight: 0.8}, {Name: "limonene", Weight: 0.8}}},
			{Name: "mint", Odorants: []sense.Share{{Name: "menthol", Weight: 1}, {Name: "limonene", Weight: 0.1}}},
			{Name: "beet", Odorants: []sense.Share{{Name: "geosmin", Weight: 1}}},
			{Name: "unknown citrus", Shares: flavor.Aroma{flavor.Citrus: 1}},
		},
	}
}

func toySpace(t require.TestingT) *sense.Space {
	s, err := sense.NewSpace(toy(), nil)
	require.NoError(t, err)
	return s
}

// drawGlass draws a glass that holds anything a drink may hold.
func drawGlass(t *rapid.T, label string) *sense.Percept {
	g := &sense.Percept{VolumeML: rapid.Float64Range(20, 500).Draw(t, label+" volume"), PouredML: 90,
		TemperatureC: rapid.Float64Range(-8, 70).Draw(t, label+" temperature")}
	for i := range g.Holds {
		g.Holds[i] = rapid.Float64Range(0, 100).Draw(t, label)
	}
	return g
}

func TestStepsAreADistance(t *testing.T) {
	const tolerance = 1e-9
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := drawGlass(t, "a"), drawGlass(t, "b"), drawGlass(t, "c")
		ab, ba, bc, ac := sense.Between(a, b), sense.Between(b, a), sense.Between(b, c), sense.Between(a, c)
		aa := sense.Between(a, a)
		assert.Zero(t, aa.Total())
		assert.InDelta(t, ab.Total(), ba.Total(), tolerance, "symmetry")
		assert.LessOrEqual(t, ac.Total(), ab.Total()+bc.Total()+tolerance, "triangle inequality")
	})
}

func TestMoreIsFurther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sense.Sense(rapid.IntRange(0, int(sense.Cloud)).Draw(t, "sense"))
		from := rapid.Float64Range(0, 50).Draw(t, "from")
		less := rapid.Float64Range(0, 50).Draw(t, "less")
		more := less + rapid.Float64Range(0.001, 50).Draw(t, "more")
		assert.Less(t, sense.StepsBetween(s, from, from+less), sense.StepsBetween(s, from, from+more))
	})
}

// From nothing to the detection threshold is one step, by the definition of the
// floor.
func TestThresholdIsAStep(t *testing.T) {
	for i := range sense.NumSenses {
		s := sense.Sense(i)
		want := 1.0
		if s == sense.Cloud {
			want = 0.5 // what is seen weighs half
		}
		assert.InDelta(t, want, sense.StepsBetween(s, 0, s.Threshold()), 1e-9, "%v", s)
		assert.NotEmpty(t, s.Source())
		assert.NotEmpty(t, s.Unit())
	}
	assert.InDelta(t, 1, sense.StepsBetween(sense.Sweet, 1000, 1150), 0.03, "far above the floor a step is the Weber fraction")
}

func TestRowsAreStepsNearby(t *testing.T) {
	s := toySpace(t)
	p := &flavor.Profile{ABV: flavor.Figure{Value: 40}, Materials: []flavor.MaterialShare{{Material: "lemon", Intensity: 8}},
		Aroma: flavor.Aroma{}}
	rapid.Check(t, func(t *rapid.T) {
		before := drawGlass(t, "before")
		near := s.Near(before)
		per := s.PerML(p)
		const ml = 1e-4
		after := *before
		after.VolumeML += ml * before.VolumeML / before.PouredML
		for i := range after.Holds {
			after.Holds[i] = (before.Holds[i]*before.VolumeML + ml*per[i]) / after.VolumeML
		}
		exact := sense.Between(before, &after)
		row := near.RowOf(&per)
		var square float64
		for _, x := range row {
			square += x * x * ml * ml
		}
		assert.InEpsilon(t, exact.Total(), math.Sqrt(square), 0.01)
	})
}

func TestLikenessOfTheToy(t *testing.T) {
	s := toySpace(t)
	between := func(a, b string) float64 {
		v, ok := s.Likeness(a, b)
		require.True(t, ok)
		return v
	}
	assert.InDelta(t, 1, between("lemon", "lemon"), 1e-9)
	assert.Greater(t, between("lemon", "orange"), between("lemon", "mint"))
	assert.InDelta(t, 0, between("lemon", "beet"), 1e-9, "nothing in common")
	assert.Greater(t, between("unknown citrus", "lemon"), 0.9, "without odorants the family stands in")
	_, ok := s.Likeness("lemon", "nothing")
	assert.False(t, ok)
}

// What smells of nothing is led by nothing, and no share is not a number.
func TestLeads(t *testing.T) {
	s := toySpace(t)
	smelling := func(intensities ...float64) *flavor.Profile {
		p := &flavor.Profile{}
		for i, x := range intensities {
			p.Materials = append(p.Materials, flavor.MaterialShare{Material: []string{"lemon", "orange", "mint"}[i], Intensity: x})
		}
		return p
	}
	assert.Empty(t, s.Leads(smelling()))
	assert.Empty(t, s.Leads(smelling(0, 0)))
	assert.Equal(t, []sense.Lead{{Name: "orange", Share: 0.6}, {Name: "lemon", Share: 0.3}}, s.Leads(smelling(3, 6, 1)), "mint has less than a fifth")
	assert.Equal(t, []sense.Lead{{Name: "orange", Share: 0.7}}, s.Leads(smelling(2.5, 7, 0.5)), "less than half of the first")
}

func TestTableFaultsAreErrors(t *testing.T) {
	for name, spoil := range map[string]func(*sense.Table){
		"odorant twice":    func(t *sense.Table) { t.Odorants = append(t.Odorants, t.Odorants[0]) },
		"unknown note":     func(t *sense.Table) { t.Odorants[0].Character[0].Name = "nothing" },
		"notes to one":     func(t *sense.Table) { t.Odorants[0].Character[0].Weight = 0.5 },
		"material twice":   func(t *sense.Table) { t.Materials = append(t.Materials, t.Materials[0]) },
		"unknown odorant":  func(t *sense.Table) { t.Materials[0].Odorants[0].Name = "nothing" },
		"weight above one": func(t *sense.Table) { t.Materials[0].Odorants[0].Weight = 2 },
		"weight nought":    func(t *sense.Table) { t.Materials[0].Odorants[0].Weight = 0 },
		"weight no number": func(t *sense.Table) { t.Materials[0].Odorants[0].Weight = math.NaN() },
		"nothing in it":    func(t *sense.Table) { t.Materials[4].Shares = flavor.Aroma{} },
		"note twice":       func(t *sense.Table) { t.Notes = append(t.Notes, t.Notes[0]) },
	} {
		table := toy()
		spoil(table)
		_, err := sense.NewSpace(table, nil)
		assert.Error(t, err, name)
	}
}

func TestNotice(t *testing.T) {
	for _, c := range []struct {
		steps float64
		lost  bool
		want  sense.Notice
		same  bool
	}{
		{0, false, sense.WontNotice, true}, {0.99, false, sense.WontNotice, true}, {1, false, sense.MayNotice, false},
		{1.5, false, sense.MayNotice, false}, {3, false, sense.MayNotice, false}, {3.01, false, sense.WillNotice, false},
		{0.5, true, sense.MayNotice, false}, {math.NaN(), false, sense.WillNotice, false},
	} {
		assert.Equal(t, c.want, sense.NoticeOf(c.steps, c.lost), "%v", c)
		assert.Equal(t, c.same, sense.SameDrink(c.steps, c.lost), "%v", c)
	}
}

// drawTable draws a small table of any odorants and materials.
func drawTable(t *rapid.T) *sense.Table {
	table := &sense.Table{Notes: toy().Notes}
	for i := range rapid.IntRange(2, 8).Draw(t, "odorants") {
		share := rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		at := rapid.IntRange(0, len(table.Notes)-2).Draw(t, "note")
		table.Odorants = append(table.Odorants, sense.Odorant{Name: fmt.Sprintf("odorant %d", i), Character: []sense.Share{
			{Name: table.Notes[at].ID, Weight: share}, {Name: table.Notes[at+1].ID, Weight: 1 - share}}})
	}
	for i := range rapid.IntRange(3, 9).Draw(t, "materials") {
		m := sense.Material{Name: fmt.Sprintf("material %d", i)}
		for _, o := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(table.Odorants)-1), 1, len(table.Odorants), rapid.ID).Draw(t, "carries") {
			m.Odorants = append(m.Odorants, sense.Share{Name: table.Odorants[o].Name, Weight: rapid.Float64Range(0.01, 1).Draw(t, "weight")})
		}
		table.Materials = append(table.Materials, m)
	}
	return table
}

// The kernel of any table is symmetric, within 0 to 1, one on its diagonal and
// positive semidefinite, so that √(2−2k) obeys the triangle inequality; and so few
// materials are factored without an error.
func TestKernelOfAnyTable(t *testing.T) {
	const tolerance, factored = 1e-7, 1e-3
	rapid.Check(t, func(t *rapid.T) {
		table := drawTable(t)
		s, err := sense.NewSpace(table, nil)
		require.NoError(t, err)
		k := s.MaterialTable(s.Materials())
		gram := mat.NewSymDense(len(k), nil)
		apart := func(i, j int) float64 { return math.Sqrt(max(0, 2-2*k[i][j])) }
		for i := range k {
			assert.InDelta(t, 1, k[i][i], tolerance)
			for j := range k {
				assert.InDelta(t, k[i][j], k[j][i], 0)
				assert.GreaterOrEqual(t, k[i][j], 0.0)
				assert.LessOrEqual(t, k[i][j], 1+tolerance)
				gram.SetSym(i, j, k[i][j])
				for m := range k {
					assert.LessOrEqual(t, apart(i, j), apart(i, m)+apart(m, j)+math.Sqrt(tolerance))
				}
			}
		}
		var eigen mat.EigenSym
		require.True(t, eigen.Factorize(gram, false))
		assert.GreaterOrEqual(t, eigen.Values(nil)[0], -tolerance)
		assert.Less(t, s.Quality().Largest, factored)
	})
}

// A glass does not know in which order it was poured, and more of an ingredient
// moves it further, in steps, as long as it is told against its own volume.
func TestPoursInAnyOrder(t *testing.T) {
	s := toySpace(t)
	rapid.Check(t, func(t *rapid.T) {
		spec := &flavor.Spec{}
		for range rapid.IntRange(1, 5).Draw(t, "pours") {
			name := rapid.SampledFrom(s.Materials()).Draw(t, "material")
			p := &flavor.Profile{Name: name, ABV: flavor.Figure{Value: rapid.Float64Range(0, 50).Draw(t, "abv")},
				Materials: []flavor.MaterialShare{{Material: name, Intensity: rapid.Float64Range(0.1, 12).Draw(t, "intensity")}}}
			spec.Pours = append(spec.Pours, flavor.Pour{Profile: p, ML: rapid.Float64Range(1, 60).Draw(t, "ml")})
		}
		turned := spec.Clone()
		turned.Pours = rapid.Permutation(spec.Pours).Draw(t, "order")
		drink := &mix.Drink{VolumeML: spec.VolumeML() * 1.3}
		apart := sense.Between(s.Percept(spec, drink), s.Percept(&turned, drink))
		assert.InDelta(t, 0, apart.Total(), 1e-9)

		base := s.Percept(spec, drink)
		per := s.PerML(spec.Pours[0].Profile)
		last := 0.0
		for _, share := range []float64{0.01, 0.05, 0.2, 0.8} {
			more := *base
			more.Holds.Add(&per, share)
			apart := sense.Between(base, &more)
			assert.Greater(t, apart.Total(), last)
			last = apart.Total()
		}
	})
}
