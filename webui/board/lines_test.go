package board

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/access"
)

func TestLinesAreLimited(t *testing.T) {
	l, ana, bo := newLines(), access.Person{Name: "Ana", Role: access.Lead}, access.Person{Name: "Bo", Role: access.Floor}
	var leave func()
	for range mostOfOnePerson {
		var ok bool
		leave, ok = l.join(ana, true)
		require.True(t, ok)
	}
	_, ok := l.join(ana, true)
	assert.False(t, ok, "she has as many as one person may")
	leaveBo, ok := l.join(bo, true)
	require.True(t, ok, "he has none yet")
	leaveBo()
	leave()
	_, ok = l.join(ana, true)
	assert.True(t, ok, "one was closed")
	for range mostLines - mostOfOnePerson {
		_, ok = l.join(access.Person{}, false)
		require.True(t, ok, "where nobody signs in, only the whole is limited")
	}
	_, ok = l.join(bo, true)
	assert.False(t, ok)
	assert.NotContains(t, l.of, bo, "nobody who has left is kept")
}
