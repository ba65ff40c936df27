package index

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

func BenchmarkBuild(b *testing.B) {
	profiles := catalogue(b)
	for b.Loop() {
		x, err := Build(context.Background(), profiles, nil)
		if err != nil {
			b.Fatal(err)
		}
		if err := x.Close(); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(profiles)), "profiles")
}

func BenchmarkSearch(b *testing.B) {
	x := build(b, catalogue(b))
	max := 20.0
	for name, q := range map[string]lookup.Query{
		"name":   {Text: "orange bitters"},
		"typing": {Text: "ora"},
		"slip":   {Text: "cinammon syrup"},
		"none":   {Text: "xyzzyqq"},
		"filter": {Text: "liqueur", ABVMax: &max, Avoid: []flavor.Allergen{"milk", "tree nuts"}},
		"all":    {},
		"like":   {Like: "london-dry-gin", Measure: byNumbers},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := x.Search(context.Background(), q); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkResolve(b *testing.B) {
	x := build(b, catalogue(b))
	for name, written := range map[string]string{"exact": "London dry gin", "slip": "lodnon dry gin", "unknown": "goat milk", "far": "xyzzyqq"} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				_, _, _ = x.Resolve(written)
			}
		})
	}
}

func BenchmarkCandidates(b *testing.B) {
	x := build(b, catalogue(b))
	need := lookup.Need{Avoid: []flavor.Allergen{"milk", "tree nuts"}, Stock: idsOf(x.profiles[:200]), Exclude: []string{x.profiles[0].ID}}
	for b.Loop() {
		if _, _, err := x.Candidates(context.Background(), need); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFollow is what one bottle more costs.
func BenchmarkFollow(b *testing.B) {
	profiles := catalogue(b)
	x := build(b, profiles)
	for i := 0; b.Loop(); i++ {
		p := *profiles[i%len(profiles)]
		now := slices.Clone(profiles)
		now[i%len(profiles)] = &p
		var err error
		if x, err = x.Follow(context.Background(), now, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// manyNames are so many bottles: the catalogue's, called after so many houses.
func manyNames(b *testing.B, n int) []*flavor.Profile {
	all := catalogue(b)
	out := make([]*flavor.Profile, n)
	for i := range out {
		p := *all[i%len(all)]
		p.ID = fmt.Sprintf("%s-%06d", p.ID, i)
		p.Name = fmt.Sprintf("house %d %s", i, p.Name)
		p.Aliases = nil
		out[i] = &p
	}
	return out
}

// BenchmarkComplete is one keystroke among so many names; less than 5 ms are the aim at a
// hundred thousand.
func BenchmarkComplete(b *testing.B) {
	for _, n := range []int{1_000, 10_000, 100_000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			x, err := New(manyNames(b, n)) // what has names enough needs no documents
			require.NoError(b, err)
			for _, typed := range []string{"l", "li", "lime", "lime ju"} {
				b.Run(typed, func(b *testing.B) {
					_, err := x.Complete(b.Context(), typed, 8) // the first time, names are put in order
					require.NoError(b, err)
					for b.Loop() {
						if _, err := x.Complete(context.Background(), typed, 8); err != nil {
							b.Fatal(err)
						}
					}
				})
			}
		})
	}
}

// BenchmarkAgainstBleve compares a search with the same query put to bleve directly,
// with nothing of ours around it.
func BenchmarkAgainstBleve(b *testing.B) {
	x := build(b, catalogue(b))
	for name, text := range map[string]string{"a name": "orange bitters", "a word": "gin", "typing": "ora"} {
		b.Run(name, func(b *testing.B) {
			key := fold(text)
			query := all(asTyped(key, strings.Fields(key)))
			search := func() time.Duration {
				begun := time.Now()
				if _, err := x.Search(b.Context(), lookup.Query{Text: text}); err != nil {
					b.Fatal(err)
				}
				return time.Since(begun)
			}
			bare := func() time.Duration {
				begun := time.Now()
				if _, err := x.line.bleve.SearchInContext(b.Context(), requestFor(query, lookup.DefaultLimit, true, true)); err != nil {
					b.Fatal(err)
				}
				return time.Since(begun)
			}
			bare() // the first time, bleve fills what it keeps
			var ours, theirs time.Duration
			for b.Loop() {
				ours += search()
				theirs += bare()
			}
			b.ReportMetric(float64(ours)/float64(theirs), "ratio")
		})
	}
}
