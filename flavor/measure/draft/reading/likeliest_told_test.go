package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/reading"
)

// What is read as what most likely stands there says so, with what of it is passed over.
func TestWhatIsLikeliestIsTold(t *testing.T) {
	const text = "Sheet 4 / sours\nHARBOUR LIGHT\nAged rum\t45\nLime\t20\nFalernum\t15\nrose tincture 2 dashes -- CUT for now\nshk no salt"
	r, err := reading.Resolve(draft.Parse(text), wholeCatalogue(t))
	require.NoError(t, err)
	require.NoError(t, r.Err())
	assert.Len(t, r.Spec.Pours, 3)
	assert.Equal(t, "HARBOUR LIGHT", r.Spec.Name)
	notes := strings.Join(r.Spec.Notes, "\n")
	for _, n := range []string{
		"the text is read as what most likely stands in it: “name: HARBOUR LIGHT / 45 Aged rum / 20 Lime / 15 Falernum / shake”",
		"line 1: “Sheet 4 / sours” pours nothing, and is skipped",
		"line 6: “rose tincture 2 dashes -- CUT for now” pours nothing, and is skipped",
		"line 7: “no salt” pours nothing, and is skipped",
	} {
		assert.Contains(t, notes, n)
	}
}

// An amount stands behind a name that is nearly an ingredient, and not before the next: common
// practice, no source.
func TestAmountsDoNotSlideToTheNextName(t *testing.T) {
	r, err := reading.Resolve(draft.Parse("amareto .75 bourbon 1.5 simple .5 egg white shake"), wholeCatalogue(t))
	require.NoError(t, err)
	require.NoError(t, r.Err())
	require.Len(t, r.Spec.Pours, 4)
	assert.InDelta(t, 1.5, r.Spec.Pours[1].Amount, 1e-9)
}
