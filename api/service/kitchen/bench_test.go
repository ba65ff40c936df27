package kitchen

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/index"
)

var shared = sync.OnceValues(func() (*Kitchen, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return New(c, index.New)
})

// testKitchen is the kitchen over the catalogue.
func testKitchen(t testing.TB) *Kitchen {
	t.Helper()
	k, err := shared()
	require.NoError(t, err)
	return k
}

// readDraft reads a draft that must be sound.
func readDraft(t testing.TB, k *Kitchen, text string) flavor.Spec {
	t.Helper()
	spec, err := k.ReadText(text)
	require.NoError(t, err)
	return spec
}

// BenchmarkRead reads a draft of ten lines, as most are written; some 100 µs are the aim.
func BenchmarkRead(b *testing.B) {
	k := testKitchen(b)
	text := "Halyard Sour\n2 oz London dry gin\n.5 oz sweet vermouth\n3/4 lemon juice\n½ oz simple\n2 dashes bitters\n8 mint\negg white\ndbl strain, coupe\nshake, up\nlemon twist"
	b.ReportAllocs()
	for b.Loop() {
		if _, err := k.ReadText(text); err != nil {
			b.Fatal(err)
		}
	}
}
