package webuitest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui"
)

func TestMain(m *testing.M) { Main(m, webui.New) }

// What is looked at again in the dark does find words that cannot be read.
func TestTheCheckerFindsWhatCannotBeRead(t *testing.T) {
	b := NewBrowser(t, 360)
	b.Open(Serve(t, NewHouse()), "/bench")
	b.Media("", "dark")
	b.Do(chromedp.Evaluate[chromedp.Void](Axe(t)),
		chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("main *").forEach((l) => { l.style.color = "#777"; l.style.backgroundColor = "#888"; })`))
	for _, run := range []string{AxeRun, axeColours} {
		found, err := chromedp.Run(b.Ctx, chromedp.Evaluate[[]string](run, chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		require.Len(t, found, 1)
		assert.Contains(t, found[0], "color-contrast")
	}
}
