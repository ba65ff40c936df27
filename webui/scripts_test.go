package webui_test

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui"
)

var (
	saidInScript = regexp.MustCompile(`\bsay\("([a-z0-9-]+)"[,)]`)
	inComment    = regexp.MustCompile(`(?m)(^|\s)//.*$|/\*.*?\*/`)
	jsString     = regexp.MustCompile("\"(?:[^\"\\\\\n]|\\\\.)*\"|`[^`]*`")
	jsValue      = regexp.MustCompile(`\$\{[^}]*\}|<[^>]*>`)
)

// notSaidInScripts are strings of scripts that nobody reads: selectors, drawers of the storage,
// headers, keys.
var notSaidInScripts = []string{"use strict", "counterpour draft", "counterpour view", "counterpour guest", "button, [data-jump]", "h2, strong",
	"input, textarea, select, [contenteditable]", "main input[type=search], main textarea", "input, select", ".drinks details", " > summary", ".top a, #for-guest ~ * a[href]", ".not-for li", ".problem p, .trouble p, p", "svg .on", "status ", "Enter", "Escape", "Enter Escape Enter", "Date",
	"#rows select.pour-unit", ".method-row select", "text/html; charset=utf-8", "name: ",
	"default-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"}

// Every sentence of a script stands in its file of sentences, and nothing stands there that
// it does not say.
func TestScriptsSayWhatStandsInTheirSentences(t *testing.T) {
	names, err := fs.Glob(webui.Embedded, "static/*.js")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	files := map[string]bool{}
	for _, name := range names {
		source, err := fs.ReadFile(webui.Embedded, name)
		require.NoError(t, err)
		assert.Empty(t, sentencesInScript(string(source)), "%s: write it into its sentences", name)
		said, kept := []string{}, []string{}
		for _, m := range saidInScript.FindAllStringSubmatch(string(source), -1) {
			said = append(said, m[1])
		}
		file := strings.TrimSuffix(path.Base(name), ".js") + ".txt"
		files[file] = true
		text, err := os.ReadFile("say/english/scripts/" + file)
		if len(said) > 0 {
			require.NoError(t, err)
		}
		for _, m := range keyed.FindAllStringSubmatch(string(text), -1) {
			kept = append(kept, m[1])
		}
		slices.Sort(said)
		assert.ElementsMatch(t, slices.Compact(said), kept, "%s: each of its sentences is said", file)
	}
	all, err := os.ReadDir("say/english/scripts")
	require.NoError(t, err)
	for _, f := range all {
		assert.True(t, files[f.Name()], "%s are the sentences of no script", f.Name())
	}
}

// sentencesInScript are the strings of a script that somebody reads.
func sentencesInScript(source string) (out []string) {
	for _, s := range jsString.FindAllString(inComment.ReplaceAllString(source, ""), -1) {
		text := jsValue.ReplaceAllString(s[1:len(s)-1], "")
		code := strings.Contains(text, "=>") // between a template and one within it
		if isSentence(text) && !code && !slices.Contains(notSaidInScripts, text) {
			out = append(out, text)
		}
	}
	return out
}

// The check finds sentences in scripts, and leaves what is none.
func TestSentencesOfScriptsAreFound(t *testing.T) {
	for source, want := range map[string][]string{
		`show("Nothing is out.") // "in a comment"`: {"Nothing is out."},
		"show(`<p>Made by <b>${who}</b></p>`)":      {"Made by "},
		`"use strict"; at("button"); say("a-key")`:  nil,
	} {
		assert.Equal(t, want, sentencesInScript(source), source)
	}
}
