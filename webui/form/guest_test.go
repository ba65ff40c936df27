package form

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A guest may set any limit on strength; links of old keep their meaning, and what is no
// limit is refused, since a guest would be served what is too strong.
func TestTheLimitOnStrength(t *testing.T) {
	for sent, want := range map[string]float64{"": 0, "low": 12, "10": 10, "7,5": 7.5, " 10 % vol ": 10, "none": 0} {
		g, err := ReadGuest(url.Values{"strength": {sent}})
		assert.NoError(t, err, sent)
		assert.Equal(t, want, g.Limits().MaxABV, sent)
		again := url.Values{}
		g.AddTo(again)
		same, err := ReadGuest(again)
		assert.NoError(t, err, sent)
		assert.Equal(t, g, same, sent)
	}
	for _, sent := range []string{"ten", "0", "-3", "81", "NaN"} {
		_, err := ReadGuest(url.Values{"strength": {sent}})
		assert.ErrorIs(t, err, ErrUnreadable, sent)
	}
}
