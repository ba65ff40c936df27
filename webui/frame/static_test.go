package frame

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPagesAreKnown(t *testing.T) {
	s, err := loadStatics(fstest.MapFS{})
	require.NoError(t, err)
	_, err = s.link("nothing.css")
	assert.Error(t, err)
	v := &views{}
	assert.Error(t, v.render(nil, "nowhere", "layout", nil))
}
