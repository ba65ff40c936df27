package beside_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/beside"
)

func TestEachCallsEveryNumberOnce(t *testing.T) {
	for n := range 20 {
		called := make([]int, n)
		require.NoError(t, beside.Each(n, func(i int) error { called[i]++; return nil }))
		for i, times := range called {
			assert.Equal(t, 1, times, "%d of %d", i, n)
		}
	}
}

func TestEachReturnsTheFirstError(t *testing.T) {
	for range 20 { // whichever core is done first
		err := beside.Each(100, func(i int) error {
			if i%10 == 7 {
				return fmt.Errorf("number %d", i)
			}
			return nil
		})
		assert.EqualError(t, err, "number 7")
	}
}

func TestAPanicIsAnError(t *testing.T) {
	wait := beside.Run(func() error { panic("spilt") })
	for range 2 {
		assert.ErrorContains(t, wait(), "it panicked: spilt")
	}
	assert.ErrorContains(t, beside.Each(3, func(i int) error { panic(i) }), "it panicked: 0")
	failed := errors.New("failed")
	assert.ErrorIs(t, beside.Run(func() error { return failed })(), failed)
}
