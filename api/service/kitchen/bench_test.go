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

// BenchmarkRead reads a plain draft of four lines and one of eleven in the shorthand of the
// trade; some 100 µs are the aim of the longer one.
func BenchmarkRead(b *testing.B) {
	k := testKitchen(b)
	for _, c := range []struct{ name, text string }{
		{"plain", "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"},
		{"shorthand", "Halyard Sour\n2 oz London dry gin\n.5 oz sweet vermouth\n3/4 lemon juice\n½ oz simple\n2 dashes bitters\n8 mint\negg white\ndbl strain, coupe\nshake, up\nlemon twist"},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := k.ReadText(c.text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
