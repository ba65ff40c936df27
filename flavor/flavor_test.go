package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every row of the tables is whole: a class has a part, a kin and a most, a unit
// is there once, and what is poured by the piece is not poured without a yield.
func TestTablesAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Classes() {
		assert.False(t, seen[string(c)], "%s stands twice", c)
		seen[string(c)] = true
		assert.NotEmpty(t, c.Part(), "%s", c)
		assert.NotEmpty(t, c.Kin(), "%s", c)
		assert.Positive(t, c.MostML(), "%s", c)
		assert.True(t, c.HotC() == 0 || c.HotC() >= 60 && c.HotC() <= 100, "%s is hot to the mouth, and no vapour", c)
		p := Profile{Class: c}
		u, ok := p.UsualUnit(Millilitre)
		assert.Equal(t, ok, u.Valid(), "%s is poured in a unit or not at all", c)
		p.Yields = []Yield{{Unit: Leaf}}
		_, ok = p.UsualUnit(Millilitre)
		assert.True(t, ok, "%s has a unit once it has a yield", c)
		assert.False(t, c.Sparkles() && c.Shaken(), "%s is shaken flat", c)
	}
	for _, u := range Units() {
		assert.False(t, seen[string(u)], "%s stands twice", u)
		seen[string(u)] = true
		kinds := 0
		for _, is := range []bool{u.Jigger(), u.Spoon(), u.Counted()} {
			if is {
				kinds++
			}
		}
		assert.LessOrEqual(t, kinds, 1, "%s", u)
		_, hand := u.HandSpread()
		assert.False(t, hand && u.Jigger(), "%s errs by an amount", u)
	}
	for _, none := range []Class{"", "nothing"} {
		assert.False(t, none.Valid() || none.Movable() || none.Shaken())
		assert.Zero(t, none.MostML())
	}
	assert.False(t, Unit("furlong").Valid())
}

// What stays out of a batch: egg and herbs always, fruit by the piece, and no
// syrup.
func TestApart(t *testing.T) {
	for _, c := range []struct {
		class Class
		unit  Unit
		want  bool
	}{{ClassEgg, Piece, true}, {ClassFreshHerb, Leaf, true}, {ClassFruit, Slice, true}, {ClassFruit, Ounce, false}, {ClassSyrup, Ounce, false}} {
		assert.Equal(t, c.want, c.class.Apart(c.unit), "%s by the %s", c.class, c.unit)
	}
}

func TestPlaceOfAFault(t *testing.T) {
	for _, c := range []struct {
		location, field string
		want            Place
	}{
		{"line 3", "unit", Place{Line: 3, Index: -1, Field: "unit"}},
		{"tiki.txt, line 12", "", Place{Line: 12, Index: -1}},
		{"pours[2].unit", "", Place{List: "pours", Index: 2, Field: "unit"}},
		{"body.spec.pours[0]", "amount", Place{List: "body.spec.pours", Index: 0, Field: "amount"}},
		{"specs[4].pours[1].amount", "", Place{List: "specs[4].pours", Index: 1, Field: "amount"}},
		{"to.pours[1]", "", Place{List: "to.pours", Index: 1}},
		{"query.limit", "", Place{Index: -1, Field: "limit"}},
		{"", "", Place{Index: -1}},
		{"a[x]", "", Place{Index: -1, Field: "a[x]"}},
		{"deadline nothing", "", Place{Index: -1, Field: "deadline nothing"}},
	} {
		f := DataFault{Location: c.location, Field: c.field}
		assert.Equal(t, c.want, f.Place(), c.location)
	}
	f := OutOfRange("limit", 0, 1, 8, "ask for 1 to 8")
	assert.Equal(t, &Bounds{1, 8}, f.Bounds)
	assert.Equal(t, "limit: 0 is out of range; ask for 1 to 8", f.Error())
	assert.ErrorIs(t, Unknown("drink", "x", nil, "%q is not known", "x"), ErrUnknown)
}

func TestJoin(t *testing.T) {
	assert.Equal(t, "", JoinAnd(nil))
	assert.Equal(t, "a", JoinOr([]string{"a"}))
	assert.Equal(t, "a, b and c", JoinAnd([]string{"a", "b", "c"}))
	assert.Equal(t, "a or b", JoinOr([]string{"a", "b"}))
}
