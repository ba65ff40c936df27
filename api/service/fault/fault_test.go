package fault

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestQuotableCuts(t *testing.T) {
	long := strings.Repeat("é", 1000)
	assert.Equal(t, strings.Repeat("é", 200)+"…", Quotable(long))
	assert.Equal(t, "a\uFFFDb", Quotable("a\xffb"))
}
