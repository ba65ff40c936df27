package main

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor/mix"
)

// Every figure of a drink has a line, and says what is in the glass: one that is
// shown ten times too small is not what was worked out.
func TestScoreShowsEveryReadout(t *testing.T) {
	text := "1 oz gin\n1 oz red bitter aperitif\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"
	k, err := sharedKitchen()
	require.NoError(t, err)
	spec, err := k.Catalogue.ReadSpec("", text)
	require.NoError(t, err)
	scored, err := k.Judge.Score(&spec)
	require.NoError(t, err)
	code, out, message := try(t, text, "score", "-")
	require.Equal(t, terminal.ExitDone, code, message)
	for _, r := range mix.Readouts() {
		line := regexp.MustCompile(`(?m)^ *` + strings.ToLower(r.Label) + ` +(-?[\d.]+)( ± [\d.]+)? ` + regexp.QuoteMeta(r.Unit)).FindStringSubmatch(strings.ReplaceAll(out, "−", "-"))
		require.NotNil(t, line, "%s in\n%s", r.Label, out)
		shown, err := strconv.ParseFloat(line[1], 64)
		require.NoError(t, err)
		assert.InDelta(t, r.Value(scored.Drink), shown, max(r.To/2, 0.5001), "%s, to its last digit", r.Label)
		assert.Equal(t, r.Spread != nil, line[2] != "", "the spread of %s", r.Label)
	}
}

// No steps lead from a drink that is well made to one that is not, so none are counted.
func TestScoreOfAMethodFaultHasNoSteps(t *testing.T) {
	code, out, message := try(t, "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\n2 oz heavy cream\nshake, up", "score", "-")
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Regexp(t, `(?m)^ +curdles: .*juice *$`, out)
	assert.Contains(t, out, "noticeable steps)", "of what is too rich")
}
