package service

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/index"
)

var sharedKitchen = sync.OnceValues(func() (*kitchen.Kitchen, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return kitchen.New(c, index.New)
})

// testHouse is the demo house at rest.
func testHouse(t testing.TB) *Snapshot {
	t.Helper()
	k, err := sharedKitchen()
	require.NoError(t, err)
	h, err := k.Catalogue.Demo()
	require.NoError(t, err)
	return AtRest(k, h)
}

// readDraft reads a draft that must be sound.
func readDraft(t testing.TB, s *Snapshot, text string) flavor.Spec {
	t.Helper()
	spec, err := s.Read(Draft{Text: &text})
	require.NoError(t, err)
	return spec
}

const (
	falernumSour = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	spoiltHoney  = "2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up"
)

func BenchmarkScore(b *testing.B) {
	k := testHouse(b)
	s := readDraft(b, k, falernumSour)
	for b.Loop() {
		if _, err := k.Judge.Score(&s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCover(b *testing.B) {
	k := testHouse(b)
	s := readDraft(b, k, falernumSour)
	for b.Loop() {
		if _, err := k.Cover(b.Context(), CoverRequest{Draft: Draft{Spec: &s}, Missing: []string{"falernum"}, Parts: 2, Limit: 10}); err != nil {
			b.Fatal(err)
		}
	}
}
