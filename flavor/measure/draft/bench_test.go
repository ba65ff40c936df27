package draft

import "testing"

// tenLines is a draft as long as most, in the shorthand of the trade.
const tenLines = "Halyard Sour\n2 oz London dry gin\n.5 oz sweet vermouth\n3/4 lemon juice\n½ oz simple\n2 dashes bitters\n8 mint\negg white\ndbl strain, coupe\nshake, up\nlemon twist"

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		Parse(tenLines)
	}
}
