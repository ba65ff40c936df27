package form

import (
	"net/url"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/guest"
)

// What a form says of a guest reaches the search: every limit that a guest may have is set
// by some field. What a drink may cost is asked for where the house's prices are, in a field
// of its own.
func TestEveryLimitOfAGuestIsRead(t *testing.T) {
	all, err := ReadGuest(url.Values{"avoid": {"tree nuts"}, "diet": {"vegan", "alcohol-free", "0.0 % alcohol"}, "strength": {"low"}})
	require.NoError(t, err)
	limits := reflect.ValueOf(all.Limits())
	for i := range limits.NumField() {
		switch name := limits.Type().Field(i).Name; name {
		case "Prices", "MaxCost":
		default:
			assert.False(t, limits.Field(i).IsZero(), "no field of a form sets %s", name)
		}
	}
	none, err := ReadGuest(url.Values{})
	require.NoError(t, err)
	assert.Equal(t, guest.Guest{}, none.Limits())
	sent := url.Values{}
	all.AddTo(sent)
	again, err := ReadGuest(sent)
	require.NoError(t, err)
	assert.Equal(t, all, again, "a link keeps the guest")
	for _, bad := range []url.Values{{"avoid": {"nutz"}}, {"diet": {"paleo"}}, {"strength": {"mild"}}} {
		_, err := ReadGuest(bad)
		assert.ErrorIs(t, err, ErrUnreadable, "%v", bad)
	}
}

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
