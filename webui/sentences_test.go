package webui_test

import (
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"counterpour/webui"
)

var (
	actions  = regexp.MustCompile(`(?s)\{\{.*?\}\}`)
	said     = regexp.MustCompile(`\{\{say "([a-z0-9-]+)"\}\}`)
	quoted   = regexp.MustCompile(`"[^"]*\pL[^"]* [^"]*"`)
	keyed    = regexp.MustCompile(`(?m)^([a-z0-9-]+): `)
	letter   = regexp.MustCompile(`\pL`)
	readOut  = []string{"title", "aria-label", "aria-description", "placeholder", "alt", "label", "summary"}
	pressed  = []string{"submit", "button", "reset"}
	fragment = html.Node{Type: html.ElementNode, Data: "body", DataAtom: atom.Body}
)

// Every word that a template shows stands in its file of sentences, and nothing stands there
// that no template shows: who translates the pages reads one folder.
func TestTemplatesSayWhatStandsInTheirSentences(t *testing.T) {
	templates, err := fs.Glob(webui.Embedded, "templates/*.html")
	require.NoError(t, err)
	parts, err := fs.Glob(webui.Embedded, "templates/parts/*.html")
	require.NoError(t, err)
	for _, name := range append(templates, parts...) {
		source, err := fs.ReadFile(webui.Embedded, name)
		require.NoError(t, err)
		assert.Empty(t, wordsIn(t, string(source)), "%s: words go to its sentences", name)
		var shown, kept []string
		for _, m := range said.FindAllStringSubmatch(string(source), -1) {
			shown = append(shown, m[1])
		}
		at := strings.Replace(strings.TrimSuffix(name, ".html")+".txt", "templates/", "say/english/pages/", 1)
		text, err := os.ReadFile(at)
		if len(shown) > 0 {
			require.NoError(t, err)
		}
		for _, m := range keyed.FindAllStringSubmatch(string(text), -1) {
			kept = append(kept, m[1])
		}
		slices.Sort(shown)
		assert.ElementsMatch(t, slices.Compact(shown), kept, "%s: each of its sentences is shown", at)
	}
}

// wordsIn are the words that a template shows by itself: in text, in what is read out of a
// tag, and in what its actions say.
func wordsIn(t *testing.T, source string) (out []string) {
	for _, act := range actions.FindAllString(source, -1) {
		if !strings.HasPrefix(act, "{{/*") && !said.MatchString(act) && !strings.HasPrefix(act, "{{template") && !strings.HasPrefix(act, "{{define") {
			out = append(out, quoted.FindAllString(act, -1)...)
		}
	}
	nodes, err := html.ParseFragmentWithOptions(strings.NewReader(actions.ReplaceAllString(source, "")), &fragment, html.ParseOptionEnableScripting(false))
	require.NoError(t, err)
	for _, node := range nodes {
		for n := range node.Descendants() {
			switch {
			case n.Type == html.TextNode && letter.MatchString(n.Data):
				out = append(out, strings.TrimSpace(n.Data))
			case n.Type == html.ElementNode:
				out = append(out, readFrom(n)...)
			}
		}
		if node.Type == html.TextNode && letter.MatchString(node.Data) {
			out = append(out, strings.TrimSpace(node.Data))
		} else if node.Type == html.ElementNode {
			out = append(out, readFrom(node)...)
		}
	}
	return out
}

// What a style sheet puts beside what is shown, and the words in it.
var (
	shownByStyle = regexp.MustCompile(`content:(?:[^;}"]|"[^"\n]*")*`)
	styledWord   = regexp.MustCompile(`"[^"]*\pL{2}[^"]*"`)
)

func wordsOfStyle(sheet string) (out []string) {
	for _, shown := range shownByStyle.FindAllString(sheet, -1) {
		out = append(out, styledWord.FindAllString(shown, -1)...)
	}
	return out
}

// No word stands in a style sheet; what it shows it takes from an attribute.
func TestStylesSayNothing(t *testing.T) {
	sheets, err := fs.Glob(webui.Embedded, "static/*.css")
	require.NoError(t, err)
	require.NotEmpty(t, sheets)
	for _, name := range sheets {
		source, err := fs.ReadFile(webui.Embedded, name)
		require.NoError(t, err)
		assert.Empty(t, wordsOfStyle(string(source)), "%s: words go to sentences", name)
	}
	assert.Equal(t, []string{`" · not yet"`}, wordsOfStyle(`a::before { content: "\2191 "; } a::after { content: " · not yet"; }`))
	assert.Empty(t, wordsOfStyle(`a::after { content: " · " attr(data-unsent); } b { font: "Some Font"; }`))
}

// readFrom are the words that a tag has for who reads or hears it.
func readFrom(n *html.Node) (out []string) {
	attributes := map[string]string{}
	for _, a := range n.Attr {
		attributes[a.Key] = a.Val
	}
	names := readOut
	if n.Data == "input" && slices.Contains(pressed, attributes["type"]) {
		names = append(slices.Clone(names), "value")
	}
	for _, name := range names {
		if letter.MatchString(attributes[name]) {
			out = append(out, name+": "+attributes[name])
		}
	}
	return out
}

// The check finds words wherever a template can show them.
func TestWordsOfTemplatesAreFound(t *testing.T) {
	for source, want := range map[string][]string{
		`<p>{{say "ready"}} <b>{{.N}}</b> · </p>`:             nil,
		`<p>{{say "ready"}} <b>now</b></p>`:                   {"now"},
		`<a href="/here" class="way" title="The way">…</a>`:   {"title: The way"},
		`{{if .A}}{{or .B "Its settings are"}}{{end}}`:        {`"Its settings are"`},
		`<input type="submit" value="Go"><input value="all">`: {"value: Go"},
		`<noscript><p>Reload</p></noscript>{{define "x"}}Say`: {"Reload", "Say"},
		`{{/* what it is */}}{{template "out of" .}}`:         nil,
	} {
		assert.Equal(t, want, wordsIn(t, source), source)
	}
}
