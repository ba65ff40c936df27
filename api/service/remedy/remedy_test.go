package remedy_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/service/remedy"
	"counterpour/api/service/servicetest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// remediesOf returns the faults of a draft, and what mends each.
func remediesOf(t *testing.T, text string, g guest.Guest) (*service.Snapshot, flavor.DataFaults, []remedy.Remedies) {
	t.Helper()
	k := servicetest.Demo(t)
	r, err := k.ReadPart(text)
	require.NoError(t, err)
	require.NotEmpty(t, r.Faults, text)
	found, err := k.Remedies(remedy.Request{Text: text, Faults: r.Faults, Rest: &r, Guest: g})
	require.NoError(t, err)
	require.Len(t, found, len(r.Faults), text)
	return k, r.Faults, found
}

// What mends a line is what a colleague would write there; common practice, no source.
func TestForMendsALine(t *testing.T) {
	for _, c := range []struct {
		name, text string
		kind       remedy.Kind
		says       string // of one of the ways of the first fault
		becomes    string
	}{
		{"a slip of the pen", "2 oz gin\n3/4 oz lemmon jooce\nshake", remedy.Named, "lemon juice", "2 oz gin\n3/4 oz lemon juice\nshake"},
		{"a name that nobody knows", "2 oz rye whiskey\n1 oz glimmer\nstir", remedy.Beside, "sweet vermouth", "2 oz rye whiskey\n1 oz sweet vermouth\nstir"},
		{"a number without a unit", "2 oz gin\n20 lemon juice\nshake", remedy.Measured, "20 ml", "2 oz gin\n20 ml lemon juice\nshake"},
		{"a measure that goes by country", "a shot of gin\n20 ml lemon juice\n10 ml simple syrup\nshake", remedy.Measured, "30 ml", "30 ml gin\n20 ml lemon juice\n10 ml simple syrup\nshake"},
		{"a name without an amount", "25 ml lemon juice\n15 ml simple syrup\nLondon dry gin\nshake", remedy.Measured, "45 ml London dry gin", "25 ml lemon juice\n15 ml simple syrup\n45 ml London dry gin\nshake"},
		{"the lower end of a range", "2 oz gin\n3/4-1 oz lemon juice\n1/2 oz simple syrup\nshake", remedy.Measured, "3/4", "2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake"},
		{"the upper end of a range", "2 oz gin, 3/4 to 1 oz lemon juice, 1/2 oz simple syrup, shake", remedy.Measured, "1", "2 oz gin, 1 oz lemon juice, 1/2 oz simple syrup, shake"},
		{"the end of a range", "2 oz gin\nup to 1 oz lemon juice\n1/2 oz simple syrup\nshake", remedy.Measured, "1", "2 oz gin\n1 oz lemon juice\n1/2 oz simple syrup\nshake"},
		{"a name of several", "2 oz gin\n1/4 oz herbal liqueur\n3/4 oz lime juice\nshake", remedy.Named, "green herbal liqueur", "2 oz gin\n1/4 oz green herbal liqueur\n3/4 oz lime juice\nshake"},
		{"a measure that nobody can tell", "2 glugs of gin\n3/4 oz lime juice\n1/2 oz simple syrup\nshake", remedy.Measured, "oz", "2 oz of gin\n3/4 oz lime juice\n1/2 oz simple syrup\nshake"},
		{"nothing like it", "2 oz gin\n3/4 oz glimmer\nshake", remedy.LeftOut, "", "2 oz gin\nshake"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, found := remediesOf(t, c.text, guest.Guest{})
			assert.Contains(t, found[0].Ways, remedy.Way{Kind: c.kind, Says: c.says, Text: c.becomes})
		})
	}
}

// One tap writes only what a name is a slip of, makes it mean for good nothing else, and nothing
// at all while a guest has something to avoid: what the name does carry would be lost from every later drink.
func TestForKeepsOnlySlips(t *testing.T) {
	nuts := guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}
	for _, c := range []struct {
		name  string
		guest guest.Guest
		want  string // empty: nothing
	}{
		{"lemmon jooce", guest.Guest{}, "lemon juice"},
		{"lemmon jooce", nuts, ""},
		{"lemmon jooce", guest.Guest{NoAlcohol: true}, ""},
		{"corkle stout", guest.Guest{}, ""},
		{"cacorra stout", guest.Guest{}, ""},
		{"Jamaiquo reserve", guest.Guest{}, ""},
		{"coffe brandling", guest.Guest{}, ""},
		{"lemon jooble tree", guest.Guest{}, ""},
	} {
		_, faults, found := remediesOf(t, "2 oz gin\n3/4 oz "+c.name+"\nshake", c.guest)
		require.Equal(t, c.name, faults[0].Value)
		assert.Equal(t, c.name, found[0].Unknown, "it can still be said what it is")
		var got []string
		for _, p := range found[0].Means {
			got = append(got, p.Name)
		}
		for _, w := range found[0].Ways {
			assert.True(t, w.Kind != remedy.Named || c.name == "lemmon jooce", "%s is no slip of %s", c.name, w.Says)
		}
		if c.want == "" {
			assert.Empty(t, got, "%s, suggested %v", c.name, faults[0].Suggest)
		} else {
			assert.Contains(t, got, c.want, c.name)
		}
	}
}

// Beside names that are near to the written one, nothing is offered that drinks like this
// one also pour: it is not what was meant.
func TestForANearNameIsEnough(t *testing.T) {
	_, _, found := remediesOf(t, "3/4 oz lemmon jooce\n1 oz glimmer\n2 oz rye whiskey\nstir", guest.Guest{})
	require.Len(t, found, 2)
	kinds := func(r remedy.Remedies) (out []remedy.Kind) {
		for _, w := range r.Ways {
			out = append(out, w.Kind)
		}
		return out
	}
	assert.Contains(t, kinds(found[0]), remedy.Named)
	assert.NotContains(t, kinds(found[0]), remedy.Beside)
	assert.Contains(t, kinds(found[1]), remedy.Beside)
}

// Nothing stands in place of what nobody drinks, and no house calls an ingredient so.
func TestForOffersNothingForAPoison(t *testing.T) {
	for _, name := range []string{"bleach", "activated charcoal", "antifreeze"} {
		_, faults, found := remediesOf(t, "2 oz gin\n3/4 oz lemon juice\n1 oz "+name+"\nshake", guest.Guest{})
		require.Len(t, faults, 1, name)
		assert.Empty(t, faults[0].Suggest, name)
		assert.Empty(t, found[0].Means, name)
		assert.Empty(t, found[0].Unknown, name)
		for _, w := range found[0].Ways {
			assert.Equal(t, remedy.LeftOut, w.Kind, name)
		}
	}
}

// What is only spelt a little like a name, or much shorter, was not meant by it.
func TestForOffersNoUnlikeName(t *testing.T) {
	for name, unlike := range map[string]string{"pesto": "pisco", "egg nog": "alcohol-free red bitter aperitif"} {
		_, faults, _ := remediesOf(t, "2 oz gin\n3/4 oz lemon juice\n1 oz "+name+"\nshake", guest.Guest{})
		require.NotEmpty(t, faults, name)
		assert.NotContains(t, faults[0].Suggest, unlike, name)
	}
}

// Several bare numbers that nothing tells the unit of are mended at once, at the first.
func TestForSeveralBareNumbers(t *testing.T) {
	_, faults, found := remediesOf(t, "20 gin\n1/2 oz lemon juice\n30 simple syrup\nshake", guest.Guest{})
	require.Len(t, faults, 2)
	assert.Contains(t, found[0].Ways, remedy.Way{Kind: remedy.AllIn, Unit: flavor.Millilitre, Text: "20 ml gin\n1/2 oz lemon juice\n30 ml simple syrup\nshake"})
	for _, w := range found[1].Ways {
		assert.Equal(t, remedy.LeftOut, w.Kind)
	}
}

// Whatever is offered leaves fewer faults, and pours nothing that the guest must not have.
func TestForOffersWhatHelpsAndSuits(t *testing.T) {
	dry := guest.Guest{NoAlcohol: true}
	for _, text := range []string{
		"2 oz gin\n3/4 oz glimmer\nshake", "1 oz lemmon jooce\n1 oz glimmer\n2 oz gin", "50 foo\n25 lemon juice\n15 simple", "gin and lemon juice\n3/4 oz glimmer",
		"2 oz orange jooce\n1 oz glimmer\n1 oz lime juice\nshake",
	} {
		for _, g := range []guest.Guest{{}, dry} {
			k, faults, found := remediesOf(t, text, g)
			for i := range found {
				for _, w := range found[i].Ways {
					r, err := k.ReadRest(w.Text)
					require.NoError(t, err, w.Text)
					assert.Less(t, len(r.Faults), len(faults), "%q becomes %q", text, w.Text)
					if w.Kind == remedy.Named || w.Kind == remedy.Beside {
						p, _, err := k.Index.Resolve(w.Says)
						require.NoError(t, err)
						assert.True(t, g.Accepts(p), "%s in %q", p.Name, text)
					}
				}
				for _, p := range found[i].Means {
					assert.True(t, g.Accepts(p), "%s in %q", p.Name, text)
				}
			}
		}
	}
}

// A fault that is about no line has no remedy, and is not forgotten.
func TestForOfNoLine(t *testing.T) {
	k := servicetest.Demo(t)
	text := "2 oz gin\nshake"
	r, err := k.ReadPart(text)
	require.NoError(t, err)
	found, err := k.Remedies(remedy.Request{Text: text, Faults: flavor.DataFaults{{Kind: flavor.ErrInvalid, Message: "it is too large"}}, Rest: &r})
	require.NoError(t, err)
	assert.Equal(t, []remedy.Remedies{{}}, found)
}

// A name that many bottles bear is doubtful, its own is not; common practice, no source.
func TestMeaningsOf(t *testing.T) {
	k := servicetest.Demo(t)
	for _, c := range []struct {
		written  string
		doubtful bool
		among    string
	}{
		{"rum", true, "aged rum"},
		{"lemmon juice", true, ""},
		{"London dry gin", false, "old tom gin"},
	} {
		r, err := k.ReadRest("2 oz " + c.written + "\n1 oz simple syrup\nshake")
		require.NoError(t, err)
		require.Empty(t, r.Faults, c.written)
		meant := k.MeaningsOf(&r, 0, guest.Guest{})
		assert.Equal(t, c.doubtful, meant.Doubtful, c.written)
		if c.among != "" {
			assert.Contains(t, meant.Ways, remedy.Way{Kind: remedy.Named, Says: c.among, Text: "2 oz " + c.among + "\n1 oz simple syrup\nshake"})
		}
	}
}

// Bare numbers are read in another unit only if they come to one drink in it.
func TestUnits(t *testing.T) {
	k := servicetest.Demo(t)
	for _, c := range []struct {
		text   string
		read   flavor.Unit
		others []flavor.Unit
	}{
		{"6 gin\n3 lemon juice\n2 simple syrup\nshake", flavor.PartUnit, []flavor.Unit{flavor.Centilitre}},
		{"2 oz gin\n1 oz lemon juice\nshake", "", []flavor.Unit{}},
		{"60 gin\n30 lemon juice\n20 simple syrup\nshake", flavor.Millilitre, []flavor.Unit{}},
	} {
		r, err := k.ReadRest(c.text)
		require.NoError(t, err)
		read, ways := remedy.Units(&r)
		units := []flavor.Unit{}
		for _, w := range ways {
			units = append(units, w.Unit)
		}
		assert.Equal(t, c.read, read, c.text)
		assert.Equal(t, c.others, units, c.text)
	}
}
