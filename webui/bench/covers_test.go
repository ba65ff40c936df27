package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/part"
)

// The first three covers are in view, the others behind a tap, numbered on.
func TestTheFirstCoversAreInView(t *testing.T) {
	v := &coversView{Covers: make([]part.Cover, 5)}
	assert.Len(t, v.First(), 3)
	assert.Len(t, v.More(), 2)
	assert.Equal(t, 4, v.MoreFrom())
	v.Covers = v.Covers[:2]
	assert.Len(t, v.First(), 2)
	assert.Empty(t, v.More())
}
