package calibration

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/trial"
)

// The reader is held to at least nine in ten of either kind read right, and to
// nothing misread without a word; and to what it reads today, so that whatever
// changes it is seen. Raise the counts with the reader. That the hands are the same each time
// is seen by README, which shows what another reading of them counted.
func TestDraftsAreReadRight(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	report, err := readDrafts(t.Context(), c)
	require.NoError(t, err)
	require.Len(t, report.Hands, 2)
	for i, want := range []struct{ drafts, right int }{{1160, 1157}, {475, 474}} {
		h := report.Hands[i]
		assert.GreaterOrEqual(t, h.Drafts, want.drafts, h.Hand)
		assert.GreaterOrEqual(t, float64(h.Became[trial.ReadRight]), 0.9*float64(h.Drafts), h.Hand)
		assert.GreaterOrEqual(t, h.Became[trial.ReadRight], want.right, h.Hand)
	}
	var text bytes.Buffer
	require.NoError(t, report.WriteMarkdown(&text))
	assert.Zero(t, report.Total().Became[trial.MisreadSilent], text.String())
}
