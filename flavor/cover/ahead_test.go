package cover

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

func TestRankedAhead(t *testing.T) {
	one, two := make([]flavor.Pour, 1), make([]flavor.Pour, 2)
	far, near := Cover{Distance: 3, Score: 90, Parts: one}, Cover{Distance: 2, Score: 90, Parts: one}
	custom, worse, hardlyWorse, blend, hardlyNearer := far, near, near, near, near
	custom.Custom, worse.Score, hardlyWorse.Score, blend.Parts, hardlyNearer.Distance = true, 80, 89.5, two, 2.6
	for _, c := range []struct {
		name   string
		ranked []Cover
		want   []Ahead
	}{
		{"none", nil, nil},
		{"alone", []Cover{far}, []Ahead{""}},
		{"the nearest first", []Cover{near, far}, []Ahead{"", ""}},
		{"hardly nearer", []Cover{far, hardlyNearer}, []Ahead{"", ""}},
		{"a custom", []Cover{custom, near}, []Ahead{AheadByCustom, ""}},
		{"a custom above a blend", []Cover{custom, blend}, []Ahead{AheadByCustom, ""}},
		{"fewer bottles", []Cover{far, blend}, []Ahead{AheadByBottles, ""}},
		{"better balanced", []Cover{far, worse}, []Ahead{AheadByBalance, ""}},
		{"hardly better balanced", []Cover{far, hardlyWorse}, []Ahead{AheadByKind, ""}},
		{"held against the first nearer one", []Cover{far, custom, near, worse}, []Ahead{AheadByKind, AheadByCustom, "", ""}},
	} {
		rankedAhead(c.ranked)
		var got []Ahead
		for i := range c.ranked {
			got = append(got, c.ranked[i].Ahead)
		}
		assert.Equal(t, c.want, got, c.name)
	}
}
