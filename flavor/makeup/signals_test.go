package makeup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/makeup"
)

func TestSignalNamesReadBack(t *testing.T) {
	seen := map[string]bool{}
	for i := range makeup.NumSignals {
		name := makeup.Signal(i).String()
		assert.NotEmpty(t, name)
		assert.False(t, seen[name], "%q names two signals", name)
		seen[name] = true
		got, ok := makeup.ParseSignal(name)
		assert.True(t, ok)
		assert.Equal(t, makeup.Signal(i), got)
	}
}
