package reading

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/words/assumed"
	"counterpour/flavor/measure/draft/words/entry"
)

func resolveText(t *testing.T, text string) (flavor.Spec, error) {
	t.Helper()
	return Read(text, drafttest.Bar())
}

func TestResolvePours(t *testing.T) {
	const tolerance = 1e-9
	for _, c := range []struct {
		text  string
		name  string // of the profile
		unit  flavor.Unit
		ml    float64
		asked string
	}{
		{"2 oz gin", "London dry gin", flavor.Ounce, 59.147059125, "gin"},
		{"3/4 oz fresh lemon juice", "Lemon juice", flavor.Ounce, 0.75 * measure.OunceML, "fresh lemon juice"},
		{"3/4 oz freshly squeezed lemon juice", "Lemon juice", flavor.Ounce, 0.75 * measure.OunceML, "freshly squeezed lemon juice"},
		{"20 ml lemon juice, fresh", "Lemon juice", flavor.Millilitre, 20, "lemon juice, fresh"},
		{"6 mint leaves", "Mint", flavor.Leaf, 2.4, "mint"},
		{"4 large mint sprigs", "Mint", flavor.Sprig, 8, "large mint"},
		{"2 thin orange slices", "Orange", flavor.Slice, 6, "thin orange"},
		{"2 lime wedges", "Lime", flavor.Wedge, 7, "lime"},
		{"2 lime leaves", "Makrut lime leaf", flavor.Leaf, 0.8, "lime leaf"},
		{"1 bay leaf", "Bay leaf", flavor.Leaf, 0.3, "bay leaf"},
		{"1 sugar cube", "Sugar cube", flavor.Cube, 2.52, "sugar cube"},
		{"1 cube sugar", "Sugar cube", flavor.Cube, 2.52, "sugar cube"},
		{"1 lime", "Lime", flavor.Piece, 28, "lime"},
		{"half a lime", "Lime", flavor.Piece, 14, "lime"},
		{"2 raspberries", "Raspberry", flavor.Piece, 5, "raspberries"},
		{"1 large egg white", "Egg white", flavor.Piece, 31, "large egg white"},
		{"1 orange peel", "Orange peel", flavor.Piece, 0.1, "orange peel"},
		{"1 orange twist", "Orange peel", flavor.Piece, 0.1, "orange twist"},
		{"dash of salt", "Salt", flavor.Dash, 0.14, "salt"},
		{"top with soda", "Soda water", flavor.Top, measure.TopML, "soda"},
		{"2 ouncse gin", "London dry gin", flavor.Ounce, 2 * measure.OunceML, "gin"},
		{"2 slces lime", "Lime", flavor.Slice, 4, "lime"},
		{"2 lime wegdes", "Lime", flavor.Wedge, 7, "lime"},
		{"1 oz sweet vermuth", "Sweet vermouth", flavor.Ounce, measure.OunceML, "sweet vermuth"},
	} {
		s, err := resolveText(t, "X\n"+c.text)
		require.NoError(t, err, c.text)
		p := s.Pours[0]
		assert.Equal(t, c.name, p.Profile.Name, c.text)
		assert.Equal(t, c.unit, p.Unit, c.text)
		assert.InDelta(t, c.ml, p.ML, tolerance, c.text)
		assert.Equal(t, c.asked, p.Match.Asked, c.text)
		assert.NotEmpty(t, p.Match.How, c.text)
	}
}

func TestResolveFaults(t *testing.T) {
	for _, c := range []struct {
		text  string
		wants []drafttest.Want
	}{
		{"X\n2 oz unicorn", []drafttest.Want{{"line 2", "unicorn", ""}}},
		{"X\n2 oz London unicorn", []drafttest.Want{{"line 2", "London unicorn", "London dry gin"}}},
		{"X\n2 gin\n30 lime juice\n20 ml water\n1 oz rum", []drafttest.Want{{"line 2", "gin", "oz"}, {"line 3", "lime juice", "oz"}, {"line 5", "rum", ""}}},
		{"X\n1 oz mint", []drafttest.Want{{"line 2", "oz", "sprig"}}},
		{"X\n1 orange wedge", []drafttest.Want{{"line 2", "wedge", "slice"}}},
		{"X\n\n1 oz wyvern\n22 gin\n1 oz gin\nlime juice", []drafttest.Want{{"line 3", "wyvern", ""}, {"line 4", "gin", ""}, {"line 6", "lime juice", ""}}},
		{"X\n100 tbsp gin\n330 oz gin", nil},
	} {
		_, err := resolveText(t, c.text)
		if len(c.wants) == 0 {
			require.NoError(t, err, c.text)
			continue
		}
		assert.Empty(t, drafttest.Departs(err, c.wants), c.text)
	}
	_, err := resolveText(t, "X\n2 oz unicorn")
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

func TestResolveTooMuch(t *testing.T) {
	b := drafttest.Bar()
	b["mint"].Yields[0].Amount.Value = 500
	_, err := Read("X\n\n21 leaves mint", b)
	assert.Empty(t, drafttest.Departs(err, []drafttest.Want{{"line 3", "21", ""}}), "21 huge leaves")
}

// A first line in words is a pour if it can be one, and else the name.
func TestResolveFirstLineInWords(t *testing.T) {
	s, err := resolveText(t, "Two Hoots\n1 oz gin")
	require.NoError(t, err)
	assert.Equal(t, "Two Hoots", s.Name)
	assert.Len(t, s.Pours, 1)
	s, err = resolveText(t, "12 Mile Limit\n1 oz gin")
	require.NoError(t, err)
	assert.Equal(t, "12 Mile Limit", s.Name)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "read as the name")
	s, err = resolveText(t, "Two limes\n1 oz gin")
	require.NoError(t, err)
	assert.Empty(t, s.Name)
	assert.Len(t, s.Pours, 2)
}

func TestResolveDraftsMadeByHand(t *testing.T) {
	gin := entry.Line{Number: 1, Amount: 1, Unit: flavor.Ounce, Name: "gin"}
	for name, d := range map[string]draft.Draft{
		"no lines":        {},
		"NaN":             {Lines: []entry.Line{{Number: 1, Amount: math.NaN(), Unit: flavor.Ounce, Name: "gin"}}},
		"unknown unit":    {Lines: []entry.Line{{Number: 1, Amount: 1, Unit: "bucket", Name: "gin"}}},
		"unknown method":  {Lines: []entry.Line{gin}, Method: "juggle"},
		"unknown service": {Lines: []entry.Line{gin}, Service: "bucket"},
	} {
		r, err := Resolve(d, drafttest.Bar())
		require.NoError(t, err)
		assert.NotEmpty(t, r.Faults, name)
	}
}

func TestResolvePassesOnFailures(t *testing.T) {
	_, err := resolveText(t, "X\n1 oz broken")
	require.Error(t, err)
	var fs flavor.DataFaults
	assert.NotErrorAs(t, err, &fs)
	assert.ErrorContains(t, err, "the index is closed")
}

func TestResolveNotes(t *testing.T) {
	s, err := resolveText(t, "X\n2 dashes bitters\n2 parts gin\n1 part gin\nsplash of water\n1 tsp sugar\ntop soda\nbuild and stir, rocks")
	require.NoError(t, err)
	notes := strings.Join(s.Notes, "\n")
	for _, part := range []string{"a part is taken as 30 ml", "topping up is taken as 90 ml", "a splash", "0.85 g/ml", "taken as build"} {
		assert.Equal(t, 1, strings.Count(notes, part), part)
	}
}

// Method and service by common practice, where none is stated.
func TestAssume(t *testing.T) {
	for _, c := range []struct {
		pours, stated string
		method        flavor.Method
		service       flavor.Service
	}{
		{"2 oz gin\n1 oz lemon juice", "", flavor.Shake, flavor.Up},
		{"2 oz gin\n1 oz pineapple juice", "", flavor.Shake, flavor.Up},
		{"2 oz gin\n1 egg white", "", flavor.Shake, flavor.Up},
		{"2 oz gin\n1 oz half and half", "", flavor.Shake, flavor.Up},
		{"2 oz gin\n1 oz sweet vermouth", "", flavor.Stir, flavor.Up},
		{"2 oz gin\n4 oz soda", "", flavor.Build, flavor.Long},
		{"2 oz gin\n1 oz soda", "", flavor.Build, flavor.Rocks},
		{"2 oz gin\n1 oz lemon juice\n2 oz soda", "", flavor.Shake, flavor.Long},
		{"2 oz gin\n4 oz pineapple juice", "build", flavor.Build, flavor.Long},
		{"2 oz gin\n1 oz pineapple juice", "build", flavor.Build, flavor.Rocks},
		{"2 oz gin\n1 oz lemon juice", "swizzle", flavor.Swizzle, flavor.Crushed},
		{"2 oz gin\n1 oz lemon juice", "blend", flavor.Blend, flavor.Up},
		{"2 oz gin\n1 oz soda", "throw", flavor.Throw, flavor.Long},
		{"2 oz gin\n1 oz lemon juice", "rocks", flavor.Shake, flavor.Rocks},
	} {
		s, err := resolveText(t, "X\n"+c.pours+"\n"+c.stated)
		require.NoError(t, err)
		assert.Equal(t, c.method, s.Method, c.pours+c.stated)
		assert.Equal(t, c.service, s.Service, c.pours+c.stated)
		assert.NotEmpty(t, s.Notes, c.pours)
	}
	s, err := resolveText(t, "X\n2 oz gin\nstir, up")
	require.NoError(t, err)
	assert.Empty(t, s.Notes)

	before := flavor.Spec{Pours: []flavor.Pour{{}}, Notes: []string{"a"}}
	after := assumed.Fill(before)
	assert.Equal(t, flavor.Spec{Pours: []flavor.Pour{{}}, Notes: []string{"a"}}, before)
	assert.True(t, after.Method.Valid() && after.Service.Valid())
}

// A first line that begins with a number, or holds a measure, beside the name of an
// ingredient is asked about: taken for a name it would leave the pour out.
func TestFirstLineWithAMeasureIsNoName(t *testing.T) {
	for _, text := range []string{"A good measure of gin", "3 gulps gin"} {
		_, err := resolveText(t, text+"\n25 ml lemon juice")
		assert.ErrorContains(t, err, text)
	}
	for _, text := range []string{"Two Hoots", "20th of June", "50/50", "Measure for Measure", "3 Wise Men"} {
		s, err := resolveText(t, text+"\n50 ml gin\n25 ml lemon juice")
		if assert.NoError(t, err, text) {
			assert.Equal(t, text, s.Name)
		}
	}
	s, err := resolveText(t, "Serves 2\n120 ml gin\n50 ml lemon juice")
	require.NoError(t, err)
	assert.Empty(t, s.Name)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "“Serves 2” is skipped")
}

// A colon after the name belongs to the line, not to the name, unless a label says that
// the name goes to the end of the line.
func TestAColonAfterTheName(t *testing.T) {
	for text, want := range map[string]string{"Two Hoots:": "Two Hoots", "Two Hoots :": "Two Hoots", "Two Hoots": "Two Hoots", "name: Two Hoots:": "Two Hoots:"} {
		s, err := resolveText(t, text+"\n50 ml gin\n25 ml lemon juice")
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, s.Name, text)
		}
	}
}

// Ice is what a drink is poured over, however it is described.
func TestOverIce(t *testing.T) {
	for _, c := range []struct {
		text string
		want flavor.Service
	}{
		{"stir, serve over big ice", flavor.Rocks}, {"stir & strain over one large ice cube", flavor.Rocks}, {"stir with ice", flavor.Up}, {"stir over a rock", flavor.Rocks},
		{"serve over crushed ice", flavor.Crushed},
	} {
		s, err := resolveText(t, "50 ml gin\n25 ml sweet vermouth\n"+c.text)
		if assert.NoError(t, err, c.text) {
			assert.Equal(t, c.want, s.Service, c.text)
		}
	}
}

// What somebody thinks of a drink is passed over aloud; a pour never is.
func TestOpinionsArePassedOver(t *testing.T) {
	s, err := resolveText(t, "50 ml gin\n25 ml lemon juice\ntoo sharp?")
	require.NoError(t, err)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "line 3: “too sharp?” is skipped")
	_, err = resolveText(t, "50 ml gin\n25 ml lemon juice\nbit of sugar")
	assert.ErrorContains(t, err, "bit of sugar")
}

// A pour that dwarfs all others has lost a point or a unit: it is asked about, with the amount that was likely
// meant. A large beer beside a shot has not, nor has a batch.
func TestAPourOutOfScaleIsAsked(t *testing.T) {
	for text, meant := range map[string]string{
		"5000 ml gin\n30 ml lemon juice\n20 ml simple syrup\nshake, up": "50",
		"2 oz gin\n75 oz lemon juice\n5 oz simple syrup":                "0.75",
		"50 ml gin\n2 l soda water":                                     "",
		"2 oz soda water\n2 lt gin\n1 oz lemon juice":                   "",
		"4 cl gin\n1 l soda water":                                      "none",
		"Serves 10\n700 ml gin\n40 ml saline":                           "none",
	} {
		_, err := resolveText(t, text)
		if meant == "none" {
			assert.NoError(t, err, text)
			continue
		}
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, text)
		assert.Contains(t, faults[0].Message, "of all else", text)
		assert.Equal(t, meant, strings.Join(faults[0].Suggest, " "), text)
	}
}

// An amount that would fill several glasses, and no batch, is doubted aloud.
func TestMuchOfOnePourIsNoted(t *testing.T) {
	for text, doubted := range map[string]bool{"300 ml gin\n125 ml lemon juice": true, "60 ml gin\n225 ml lemon juice": true, "60 ml gin\n25 ml lemon juice": false} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Equal(t, doubted, strings.Contains(strings.Join(s.Notes, "\n"), "a lot for one drink"), text)
	}
}
