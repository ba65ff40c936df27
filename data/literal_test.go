package data_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/literal"
	"counterpour/flavor/measure/draft/reading"
)

// A draft in which every word says what it is reads as it does with a remark below it, which
// makes that nobody takes it at its word.
func TestLiteralDraftsReadAsAnyOther(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	records, err := data.Proven()
	require.NoError(t, err)
	taken := 0
	for i := range records {
		text := strings.TrimSpace(records[i].Text)
		d := draft.Parse(text)
		if !literal.Written(&d) {
			continue
		}
		taken++
		quick, err := reading.Read(text, c)
		require.NoError(t, err, records[i].Name)
		slow, err := reading.Read(text+"\n# as ever", c)
		require.NoError(t, err, records[i].Name)
		assert.Equal(t, slow, quick, records[i].Name)
	}
	t.Logf("%d of %d proven drinks are literal", taken, len(records))
	assert.Greater(t, taken, len(records)*9/10, "nearly all proven drinks are written so")
}
