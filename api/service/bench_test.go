package service

import (
	"context"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
)

var sharedKitchen = sync.OnceValues(func() (*Kitchen, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return NewKitchen(context.Background(), c, nil)
})

func testKitchen(t testing.TB) *Kitchen {
	k, err := sharedKitchen()
	require.NoError(t, err)
	return k
}

const (
	falernumSour = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	spoiltHoney  = "2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up"
)

func BenchmarkScore(b *testing.B) {
	k := testKitchen(b)
	s, err := k.Read(falernumSour)
	require.NoError(b, err)
	for b.Loop() {
		if _, err := k.Judge.Score(&s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCover(b *testing.B) {
	k := testKitchen(b)
	s, err := k.Read(falernumSour)
	require.NoError(b, err)
	for b.Loop() {
		if _, _, _, err := k.Cover(context.Background(), CoverRequest{Spec: s, Missing: "falernum", Parts: 2}); err != nil {
			b.Fatal(err)
		}
	}
}
