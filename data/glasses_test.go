package data

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// bench pours drafts and senses them.
type bench struct {
	t *testing.T
	c *Catalogue
	m *mix.Mixer
}

func newBench(t *testing.T) *bench {
	c, err := Embedded()
	require.NoError(t, err)
	m, err := mix.NewMixer()
	require.NoError(t, err)
	return &bench{t, c, m}
}

func (b *bench) glass(text string) *sense.Percept {
	s, err := b.c.ReadSpec("draft", text)
	require.NoError(b.t, err, text)
	d, err := b.m.Mix(&s)
	require.NoError(b.t, err)
	return b.c.Space().Percept(&s, d)
}

func (b *bench) steps(from, to string) sense.Steps { return sense.Between(b.glass(from), b.glass(to)) }

const (
	ginSour    = "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	ryeStirred = "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"
	rumSour    = "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\n5 drops saline\nshake, up"
	orangeSour = "2 oz blanco tequila\n3/4 oz lime juice\n3/4 oz triple sec\nshake, up"
)

// What a guest notices of a swap in the glass; common practice, no source.
func TestNotice(t *testing.T) {
	b := newBench(t)
	for _, x := range []struct {
		name, from, swap, by string
		least, most          float64 // steps
	}{
		{"nothing", ginSour, "lemon juice", "lemon juice", 0, 0},
		{"another white sugar", "2 oz rye whiskey\n2 tsp white sugar\n2 dashes aromatic bitters\nstir, rocks", "white sugar", "caster sugar", 0, 0.5},
		{"rich for simple syrup at equal sugar", ginSour, "3/4 oz simple syrup", "0.52 oz rich simple syrup", 0, 1.5},
		{"lime for lemon", ginSour, "lemon juice", "lime juice", 0.8, 3},
		{"a quarter ounce of syrup more", ginSour, "3/4 oz simple syrup", "1 oz simple syrup", 1, 3},
		{"stronger gin", ginSour, "London dry gin", "navy-strength gin", 1, 3.5},
		{"vodka for gin", ginSour, "London dry gin", "vodka", 3, 15},
		{"bourbon for rye", ryeStirred, "rye whiskey", "bourbon", 1, 3.5},
		{"a dash more bitters", ryeStirred, "2 dashes", "3 dashes", 0.3, 2},
		{"no bitters", ryeStirred, "\n2 dashes aromatic bitters", "", 1.5, 6},
		{"peated malt for rye", ryeStirred, "rye whiskey", "peated single malt", 3, 15},
		{"curaçao for triple sec", orangeSour, "triple sec", "orange curaçao", 0.2, 1.5},
		{"mezcal for tequila", orangeSour, "blanco tequila", "mezcal", 3, 10},
		{"no saline", rumSour, "\n5 drops saline", "", 0.1, 1.5},
		{"twelve times the salt", rumSour, "5 drops saline", "60 drops saline", 3, 10},
		{"fish sauce for saline", rumSour, "5 drops saline", "1/4 oz fish sauce", 6, 40},
		{"hazelnut for almond", "2 oz gold rum\n3/4 oz lime juice\n3/4 oz orgeat\nshake, up", "orgeat", "hazelnut orgeat", 1.5, 8},
		{"passion fruit for banana", "1 oz banana liqueur\n2 oz bourbon\n3/4 oz lemon juice\nshake, up", "banana liqueur", "passion fruit liqueur", 3, 12},
		{"cream for egg white", "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz egg white\nshake, up", "1 oz egg white", "1 oz heavy cream", 5, 40},
		{"diet tonic for tonic", "2 oz London dry gin\n4 oz tonic water\nbuild, long", "tonic water", "diet tonic water", 0, 1.5},
		{"soda for tonic", "2 oz London dry gin\n4 oz tonic water\nbuild, long", "tonic water", "soda water", 4, 20},
		{"still water for soda", "2 oz vodka\n4 oz soda water\nbuild, long", "soda water", "water", 3, 15},
		{"chilli in it", ginSour, "\nshake", "\n2 dashes chilli tincture\nshake", 1.5, 20},
	} {
		s := b.steps(x.from, strings.Replace(x.from, x.swap, x.by, 1))
		assert.GreaterOrEqual(t, s.Total(), x.least, "%s: %v", x.name, s)
		assert.LessOrEqual(t, s.Total(), x.most, "%s: %v", x.name, s)
	}
}

// A glass is nearer to the second than to the third; common practice, no source.
func TestGlassesInOrder(t *testing.T) {
	b := newBench(t)
	for _, x := range []struct{ from, out, near, far string }{
		{ginSour, "London dry gin", "soft dry gin", "blanco tequila"},
		{ginSour, "lemon juice", "lime juice", "grapefruit juice"},
		{ginSour, "lemon juice", "lime juice", "white wine vinegar"},
		{ryeStirred, "rye whiskey", "bourbon", "blended Scotch whisky"},
		{ryeStirred, "rye whiskey", "bourbon", "white rum"},
		{ryeStirred, "sweet vermouth", "spanish red vermouth", "dry vermouth"},
		{ryeStirred, "aromatic bitters", "clove bitters", "celery bitters"},
		{rumSour, "white rum", "gold rum", "London dry gin"},
		{rumSour, "white rum", "gold rum", "peated single malt"},
		{orangeSour, "triple sec", "orange curaçao", "crème de violette"},
		{orangeSour, "blanco tequila", "reposado tequila", "mezcal"},
		{"2 oz cognac\n3/4 oz lemon juice\n3/4 oz triple sec\nshake, up", "cognac", "armagnac", "calvados"},
		{"2 oz cognac\n3/4 oz lemon juice\n3/4 oz triple sec\nshake, up", "cognac", "brandy", "bourbon"},
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "red bitter aperitif", "dark red bitter aperitif", "crème de cassis"},
		{"2 oz gin\n4 oz tonic water\nbuild, long", "tonic water", "light tonic water", "cola"},
	} {
		near := b.steps(x.from, strings.Replace(x.from, x.out, x.near, 1))
		far := b.steps(x.from, strings.Replace(x.from, x.out, x.far, 1))
		assert.Less(t, near.Total(), far.Total(), "%s by %s or by %s\n%v\n%v", x.out, x.near, x.far, near, far)
	}
}

// What led a bottle is lost if nothing else brings it.
func TestLost(t *testing.T) {
	b := newBench(t)
	for _, x := range []struct {
		from, out, by string
		lost          string // the text of the first; empty if nothing is
	}{
		{ginSour, "lemon juice", "lime juice", ""},
		{"2 oz vodka\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "lemon juice", "white wine vinegar", "no citral"},
		{ryeStirred, "rye whiskey", "rye whiskey", ""},
		{rumSour, "saline", "rose water", "no salt"},
		{rumSour, "5 drops saline", "1 barspoon olive brine", ""},
		{ginSour, "simple syrup", "honey syrup", ""},
		{ginSour, "simple syrup", "water", "no sweetness"},
		{"2 oz vodka\n4 oz soda water\nbuild, long", "soda water", "water", "no fizz"},
		{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz egg white\nshake, up", "egg white", "chickpea water", ""},
		{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz egg white\nshake, up", "egg white", "heavy cream", "no foam"},
		{"1 oz banana liqueur\n2 oz bourbon\n3/4 oz lemon juice\nshake, up", "banana liqueur", "passion fruit liqueur", "so no banana"},
		{"1 oz crème de violette\n2 oz London dry gin\n3/4 oz lemon juice\nshake, up", "crème de violette", "rose liqueur", "so no violet"},
		{"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz orgeat\nshake, up", "orgeat", "amaretto", ""},
		{"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz orgeat\nshake, up", "orgeat", "simple syrup", "so no almond"},
	} {
		p, _, ok := b.c.ByName(strings.TrimPrefix(x.out, "5 drops "))
		require.True(t, ok, x.out)
		lost := b.c.Space().Lost(p, b.glass(x.from), b.glass(strings.Replace(x.from, x.out, x.by, 1)))
		if x.lost == "" {
			assert.Empty(t, lost, "%s by %s", x.out, x.by)
			continue
		}
		if assert.NotEmpty(t, lost, "%s by %s", x.out, x.by) {
			assert.Contains(t, lost[0].Text(), x.lost)
		}
	}
}

// Covers change what a drink smells of, in words.
func TestNoteChanges(t *testing.T) {
	b := newBench(t)
	changes := b.c.Space().NoteChanges(b.glass(ginSour), b.glass(strings.Replace(ginSour, "London dry gin", "mezcal", 1)), 1)
	words := map[string]float64{}
	for _, x := range changes {
		words[x.Note.ID] = x.Steps
	}
	assert.Less(t, words["pine"], -1.0, "the juniper goes: %v", words)
	assert.Greater(t, words["wood smoke"], 1.0, "and smoke comes: %v", words)
}

// Order of pours does not matter.
func TestOrderOfPoursDoesNotMatter(t *testing.T) {
	b := newBench(t)
	s := b.steps("2 oz gin\n1 oz lemon juice\n1 oz orgeat\nshake, up", "1 oz orgeat\n2 oz gin\n1 oz lemon juice\nshake, up")
	assert.InDelta(t, 0, s.Total(), 1e-9)
}
