package data

import (
	"context"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// leastDemoScore is above the edge of balanced, so that a small refit of the
// families leaves the menu balanced.
const leastDemoScore = 75.0

func loadDemo(t *testing.T) (*Catalogue, *House) {
	t.Helper()
	c, err := Embedded()
	require.NoError(t, err)
	h, err := c.Demo()
	require.NoError(t, err)
	return c, h
}

func demoJudge(t *testing.T, c *Catalogue) (*mix.Mixer, *balance.Judge) {
	t.Helper()
	families, err := Families()
	require.NoError(t, err)
	fitted, err := Fitted()
	require.NoError(t, err)
	records, err := Proven()
	require.NoError(t, err)
	book, err := c.Book(records)
	require.NoError(t, err)
	set, err := weigh.NewSet(families, fitted, book, template.DefaultTuning())
	require.NoError(t, err)
	mixer, err := mix.NewMixer()
	require.NoError(t, err)
	return mixer, balance.NewJudge(mixer, set, balance.Pantry{})
}

func TestDemoIsMarkedInvented(t *testing.T) {
	_, h := loadDemo(t)
	assert.True(t, h.Invented)
	assert.Contains(t, strings.ToLower(h.Description), "invented")
	assert.NotEmpty(t, h.Name)
}

func TestDemoMenuIsBalanced(t *testing.T) {
	c, h := loadDemo(t)
	_, judge := demoJudge(t, c)
	for i := range h.Specs {
		s := &h.Specs[i]
		r, err := judge.Score(&s.Spec)
		require.NoError(t, err, s.Name)
		first := r.Judgement.Fits[:min(2, len(r.Judgement.Fits))]
		t.Logf("%-24s %-18s %5.1f %4.1f %% vol, taken for %s", s.Name, s.Family, r.Judgement.Score, r.Drink.ABV, first[0].ID)
		for _, f := range r.Faults {
			t.Logf("%-24s %s", "", f.Text)
		}
		assert.Equal(t, weigh.Balanced, r.Verdict, s.Name)
		assert.GreaterOrEqual(t, r.Judgement.Score, leastDemoScore, s.Name)
		assert.True(t, slices.ContainsFunc(first, func(f weigh.Fit) bool { return f.ID == s.Family }),
			"%s is meant for %s and taken for %v", s.Name, s.Family, first)
	}
}

func TestDemoMenuHasEveryFamily(t *testing.T) {
	_, h := loadDemo(t)
	families, err := Families()
	require.NoError(t, err)
	for _, f := range families {
		assert.True(t, slices.ContainsFunc(h.Specs, func(s HouseSpec) bool { return s.Family == f.ID }), f.ID)
	}
}

// No drink of the house may pass for a real one.
func TestDemoMenuTakesNoProvenName(t *testing.T) {
	_, h := loadDemo(t)
	records, err := Proven()
	require.NoError(t, err)
	proven := map[string]bool{}
	for _, r := range records {
		proven[flavor.NormaliseName(r.Name)] = true
	}
	for _, s := range h.Specs {
		assert.Equal(t, s.Name, s.Spec.Name)
		assert.False(t, proven[flavor.NormaliseName(s.Name)], s.Name)
	}
}

// Loading refuses a pour that is not kept; here the shelf must also hold more
// than the menu, or nothing could stand in.
func TestDemoStockCoversTheMenu(t *testing.T) {
	_, h := loadDemo(t)
	kept := map[string]bool{}
	for _, p := range h.Stock {
		kept[p.ID] = true
	}
	poured := map[string]bool{}
	for _, s := range h.Specs {
		for _, p := range s.Spec.Pours {
			poured[p.Profile.ID] = true
			assert.True(t, kept[p.Profile.ID], "%s: %s", s.Name, p.Profile.ID)
		}
	}
	assert.Greater(t, len(kept), len(poured)+20)
	assert.Len(t, h.Out, 3)
	for _, p := range h.Out {
		assert.True(t, kept[p.ID], p.ID)
		assert.GreaterOrEqual(t, drinksWith(h, p), 3, p.ID)
	}
}

func drinksWith(h *House, p *flavor.Profile) (n int) {
	for _, s := range h.Specs {
		if pours(&s.Spec, p) {
			n++
		}
	}
	return n
}

func pours(s *flavor.Spec, p *flavor.Profile) bool {
	return slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool { return x.Profile == p })
}

// Every drink that an empty bottle stops can be poured, in balance, from what
// is left on the shelf.
func TestDemoShelfCoversWhatRanDry(t *testing.T) {
	c, h := loadDemo(t)
	mixer, judge := demoJudge(t, c)
	customs, err := c.Customs()
	require.NoError(t, err)
	finder := cover.NewFinder(mixer, judge, c.Space(), customs, cover.DefaultWeights())
	left := slices.DeleteFunc(slices.Clone(h.Stock), func(p *flavor.Profile) bool { return slices.Contains(h.Out, p) })
	for _, gone := range h.Out {
		for i := range h.Specs {
			s := &h.Specs[i]
			if !pours(&s.Spec, gone) {
				continue
			}
			r, err := finder.Find(context.Background(), cover.Request{Spec: &s.Spec, Missing: []*flavor.Profile{gone}, Candidates: left, Limit: 1})
			require.NoError(t, err, s.Name)
			require.NotEmpty(t, r.Covers, s.Name)
			t.Logf("%s without %s: %s (%.1f differences, score %.0f)", s.Name, gone.Name, r.Covers[0].Text, r.Covers[0].Distance, r.Covers[0].Score)
			assert.False(t, r.Unbalanced, s.Name)
		}
	}
}

// Callers may change the house they were given.
func TestDemoReturnsANewHouse(t *testing.T) {
	c, a := loadDemo(t)
	b, err := c.Demo()
	require.NoError(t, err)
	a.Stock[0], a.Specs[0].Spec.Pours[0].ML = nil, -1
	assert.NotNil(t, b.Stock[0])
	assert.Positive(t, b.Specs[0].Spec.Pours[0].ML)
}

func TestHouseFaultsNameRecordAndField(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	const good = `version = 1
invented = true
name = "Test House"
description = "An invented house."
stock = ["white-rum", "lime-juice", "simple-syrup"]
out = ["white-rum"]
[[spec]]
name = "Test Drink"
family = "sour"
text = """
2 oz white rum
3/4 oz lime juice
3/4 oz simple syrup
shake, up
"""
`
	load := func(text string) (*House, error) {
		return c.loadHouse(fstest.MapFS{"house.toml": {Data: []byte(text)}}, "house.toml")
	}
	h, err := load(good)
	require.NoError(t, err)
	require.Len(t, h.Specs, 1)
	assert.Equal(t, "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", h.Specs[0].Text)

	for _, test := range []struct {
		name, old, new string
		want           []string
	}{
		{"version", "version = 1", "version = 2", []string{"version is 2"}},
		{"unknown field", "invented = true", "invented = true\nowner = \"x\"", []string{"line 3", `"owner"`}},
		{"not invented", "invented = true", "invented = false", []string{"field invented"}},
		{"no name", `"Test House"`, `" "`, []string{"field name"}},
		{"two lines", "An invented house.", `An invented\nhouse.`, []string{"field description"}},
		{"unknown stock", `"white-rum",`, `"white-rum", "gull-oil",`, []string{"field stock", `"gull-oil"`}},
		{"stock twice", `"white-rum",`, `"white-rum", "white-rum",`, []string{"field stock", "twice"}},
		{"out of what is not kept", `out = ["white-rum"]`, `out = ["gold-rum"]`, []string{"field out", `"gold-rum"`}},
		{"unknown family", `"sour"`, `"brine"`, []string{`spec "Test Drink"`, "field family", `"brine"`}},
		{"unknown pour", "2 oz white rum", "2 oz gull oil", []string{`spec "Test Drink"`, "field text", "line 1", "gull oil"}},
		{"pour not kept", "2 oz white rum", "2 oz gold rum", []string{`spec "Test Drink"`, "field text", `"gold-rum"`}},
		{"no method", "shake, up\n", "", []string{`spec "Test Drink"`, "field text", "method"}},
		{"no drink name", `"Test Drink"`, `""`, []string{`spec ""`, "field name"}},
		{"drink twice", "[[spec]]", "[[spec]]\nname = \"Test drinks\"\nfamily = \"sour\"\ntext = \"2 oz white rum\\n1 oz lime juice\\nshake, up\"\n[[spec]]",
			[]string{`spec "Test Drink"`, "field name", "once"}},
		{"no menu", good[strings.Index(good, "[[spec]]"):], "", []string{"field spec"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			text := strings.Replace(good, test.old, test.new, 1)
			require.NotEqual(t, good, text)
			_, err := load(text)
			require.Error(t, err)
			for _, want := range append(test.want, "house.toml") {
				assert.ErrorContains(t, err, want)
			}
		})
	}

	_, err = c.loadHouse(fstest.MapFS{}, "house.toml")
	require.ErrorIs(t, err, os.ErrNotExist)
}
