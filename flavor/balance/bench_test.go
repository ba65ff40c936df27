package balance_test

import (
	"testing"

	"counterpour/flavor/balance"
)

// Spoilt drafts: one that one move mends, one that takes two.
var spoilt = []struct{ name, text string }{
	{"one move", "1 oz gin\n1 oz red bitter aperitif\n2 oz lemon juice\n1/2 oz simple syrup\n2 dashes aromatic bitters\nshake, up"},
	{"two moves", "2 oz gin\n1/8 oz lemon juice\n2 1/2 oz simple syrup\n1 dash aromatic bitters\nshake, up"},
}

// BenchmarkFixes: some 0.3 ms for one move and 1 to 2 ms for two are the aim.
func BenchmarkFixes(b *testing.B) {
	k := newKitchen(b)
	for _, c := range spoilt {
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

func BenchmarkScore(b *testing.B) {
	k := newKitchen(b)
	s := k.read(b, spoilt[0].text)
	for b.Loop() {
		k.score(b, s)
	}
}
