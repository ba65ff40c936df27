package webuitest

import (
	"compress/gzip"
	"crypto/sha512"
	"embed"
	"encoding/base64"
	"io"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

//go:embed testdata
var testdata embed.FS

// Axe is the accessibility checker, see testdata/README.md.
func Axe(t *testing.T) string {
	t.Helper()
	f, err := testdata.Open("testdata/axe-4.14.1.min.js.gz")
	require.NoError(t, err)
	defer f.Close()
	z, err := gzip.NewReader(f)
	require.NoError(t, err)
	text, err := io.ReadAll(z)
	require.NoError(t, err)
	readme, err := testdata.ReadFile("testdata/README.md")
	require.NoError(t, err)
	sum := sha512.Sum384(text)
	require.Contains(t, string(readme), base64.StdEncoding.EncodeToString(sum[:]), "the file is the stated one")
	return string(text)
}

// AxeRun is what the checker finds, a line each. It fetches nothing first, for no rule
// that runs asks for it, and works out no selectors: a line shows the element itself.
const AxeRun = `axe.run(document, {resultTypes: ["violations"], preload: false, selectors: false})` + axeLines

// axeColours is what it finds that turns on colours alone.
const axeColours = `axe.run(document, {resultTypes: ["violations"], preload: false, selectors: false, runOnly: {type: "rule", values: ["color-contrast", "link-in-text-block"]}})` + axeLines

const axeLines = `.then((r) => r.violations.map((v) => v.id + ": " + v.help + ": " + v.nodes.map((n) => n.html.slice(0, 160) + " " + n.any.map((a) => a.message)).join(" | ")))`

// Accessible asserts that the page passes the checker and fits its screen, light
// and dark, narrow and wide, with everything opened that can be; closed, it fits
// as well. In the dark only what turns on colours is looked at again.
func (b *Browser) Accessible(script, page string) {
	b.T.Helper()
	b.Do(chromedp.EmulateViewport(360, 800), chromedp.Evaluate[chromedp.Void](script))
	b.Fits()
	b.Do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach((d) => { d.open = true; })`))
	for _, width := range []int64{360, 1280} {
		b.Do(chromedp.EmulateViewport(width, 800))
		b.Fits()
		for _, look := range []struct{ scheme, run string }{{"light", AxeRun}, {"dark", axeColours}} {
			b.Media("", look.scheme)
			found, err := chromedp.Run(b.Ctx, chromedp.Evaluate[[]string](look.run, chromedp.EvalAwaitPromise))
			require.NoError(b.T, err, page)
			assert.Empty(b.T, found, "%s at %d px, %s", page, width, look.scheme)
		}
	}
}
