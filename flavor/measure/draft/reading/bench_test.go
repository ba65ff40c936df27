package reading

import (
	"testing"

	"counterpour/flavor/measure/draft/drafttest"
)

// tenLines is a draft as long as most, in the shorthand of the trade.
const tenLines = "Halyard Sour\n2 oz London dry gin\n.5 oz sweet vermouth\n3/4 lemon juice\n½ oz simple\n2 dashes bitters\n8 mint\negg white\ndbl strain, coupe\nshake, up\nlemon twist"

func BenchmarkRead(b *testing.B) {
	s := drafttest.Bar()
	if _, err := Read(tenLines, s); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		_, _ = Read(tenLines, s)
	}
}
