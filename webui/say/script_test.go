package say

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A sentence stands in a script as a string, or as a function of its values.
func TestSentencesArePutIntoScripts(t *testing.T) {
	for _, c := range []struct{ name, script, sentence, want, fault string }{
		{name: "without values", script: `show(say("a"));`, sentence: `“So” & "no" <b>`, want: `show("“So” & \"no\" <b>");`},
		{name: "with values", script: `say("a", { N: n });`, sentence: "{{.N}} of `${x}`\\", want: "((v) => `${v.N} of \\`\\${x}\\`\\\\`)({ N: n });"},
		{name: "counted", script: `say("a", { N: 2 })`, sentence: `{{count .N "one's" "more"}}`, want: "((v) => `${v.N + \" \" + [\"one's\", \"more\"][v.N === 1 ? 0 : 1]}`)({ N: 2 })"},
		{name: "chosen", script: `say("a", { N: 2 })`, sentence: `{{if .N}}some{{else}}none{{end}}.`, want: "((v) => `${v.N ? `some` : `none`}.`)({ N: 2 })"},
		{name: "no call of ours", script: `essay("b"); x.say(y)`, sentence: "A", want: `essay("b"); x.say(y)`},
		{name: "one that is missing", script: `say("b")`, sentence: "A", fault: `english/scripts/s.txt has no sentence "b"; write it there`},
		{name: "what no script can say", script: `say("a", {})`, sentence: `{{range .N}}x{{end}}`, fault: `"a": a script cannot say`},
		{name: "a choice by more than a value", script: `say("a", {})`, sentence: `{{if eq .N 1}}x{{end}}`, fault: `a script cannot say {{eq .N 1}}`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := inScript(fstest.MapFS{"english/scripts/s.txt": {Data: []byte("a: " + c.sentence + "\n")}}, "s.js", c.script)
			if c.fault != "" {
				assert.ErrorContains(t, err, c.fault)
				return
			}
			require.NoError(t, err)
			assert.Equal(t, c.want, got)
		})
	}
}
