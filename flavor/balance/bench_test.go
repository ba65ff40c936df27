package balance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
)

// Drafts of many families, as a bartender writes them; common practice, no source.
var (
	goodDrafts = []string{
		"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up",
		"1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up",
		"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks",
		"2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up",
		"60 ml bourbon\n5 ml demerara syrup\n2 dashes aromatic bitters\nstir, rocks",
		"45 ml gin\n30 ml lemon juice\n15 ml simple syrup\n60 ml soda water\nbuild, long",
		"2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up",
		"2 1/2 oz London dry gin\n1/2 oz dry vermouth\n1 dash orange bitters\nstir, up",
	}
	// spoiltDrafts are the same by turns too sweet, too sour, too long, too bitter, without
	// a base or swamped by something strong: one move mends most, some take two.
	spoiltDrafts = []string{
		"2 oz London dry gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up",
		"1 oz gin\n1 oz red bitter aperitif\n2 oz lemon juice\n1/2 oz simple syrup\n2 dashes aromatic bitters\nshake, up",
		"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1/2 oz absinthe\nshake, up",
		"2 oz blanco tequila\n1/4 oz triple sec\n1 1/2 oz lime juice\nshake, up",
		"60 ml bourbon\n30 ml demerara syrup\n2 dashes aromatic bitters\nstir, rocks",
		"45 ml gin\n60 ml lemon juice\n15 ml simple syrup\n60 ml soda water\nbuild, long",
		"2 oz rye\n1 oz sweet vermouth\n1/2 oz aromatic bitters\nstir, up",
		"3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz soda water\nshake, up",
	}
)

// drafts reads drafts, and checks that they are of the kind that is measured.
func (k *kitchen) drafts(b *testing.B, texts []string, balanced bool) []*flavor.Spec {
	out := make([]*flavor.Spec, len(texts))
	for i, text := range texts {
		out[i] = k.read(b, text)
		require.Equal(b, balanced, len(k.score(b, out[i]).Faults) == 0, text)
	}
	return out
}

// BenchmarkScore is a score of a balanced draft; some 40 µs are the aim.
func BenchmarkScore(b *testing.B) {
	k := newKitchen(b)
	drafts := k.drafts(b, goodDrafts, true)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		k.score(b, drafts[i%len(drafts)])
	}
}

// BenchmarkMend is a score of a draft that is not, with its faults and fixes; some
// 250 µs on average are the aim.
func BenchmarkMend(b *testing.B) {
	k := newKitchen(b)
	drafts := k.drafts(b, spoiltDrafts, false)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s := drafts[i%len(drafts)]
		if _, _, err := k.judge.Mend(s, balance.MaxFixes); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFixes is the search for fixes alone, of a draft that one move mends and of
// one that takes two.
func BenchmarkFixes(b *testing.B) {
	k := newKitchen(b)
	for _, c := range []struct{ name, text string }{
		{"one move", spoiltDrafts[1]},
		{"two moves", "2 oz gin\n1/8 oz lemon juice\n2 1/2 oz simple syrup\n1 dash aromatic bitters\nshake, up"},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := k.read(b, c.text)
			r := k.score(b, s)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := k.judge.Fixes(s, r, balance.MaxFixes); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A score makes 18 pieces of memory, most of them the answer. Nearly three times as many are
// let pass, since the race detector has lent memory thrown away now and then.
func TestScoreLeavesLittleBehind(t *testing.T) {
	const most = 50
	k := newKitchen(t)
	for _, text := range goodDrafts {
		s := k.read(t, text)
		assert.Less(t, testing.AllocsPerRun(20, func() { k.score(t, s) }), float64(most), text)
	}
}
