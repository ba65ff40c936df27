package terminal

import (
	"bytes"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
)

// A command that is done at once says nothing of it; one that is not says that it goes
// on, until it is done.
func TestSayingReportsProgress(t *testing.T) {
	for _, c := range []struct {
		takes time.Duration
		says  string
	}{
		{time.Second, ""},
		{5 * time.Second, "pouring, 2 s so far\npouring, 4 s so far\n"},
	} {
		synctest.Test(t, func(t *testing.T) {
			var out bytes.Buffer
			stop := Saying(&out, "pouring")
			time.Sleep(c.takes)
			stop()
			time.Sleep(time.Minute)
			assert.Equal(t, c.says, out.String())
		})
	}
}
