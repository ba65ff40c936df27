package stock_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// What a screen reader and tired eyes need holds in the dark as well, on a phone and
// on a desk.
func TestStockPagesInTheDark(t *testing.T) {
	site := webuitest.Serve(t, laidHouse{webuitest.NewHouse()})
	for _, width := range []int64{360, 1280} {
		b := webuitest.NewBrowser(t, width)
		b.Media("screen", "dark")
		for _, path := range []string{"/stock", "/stock/import", "/stock/house", "/start", "/training", "/training/progress"} {
			b.Open(site, path)
			b.Fits()
			b.Accessible(webuitest.Axe(t), path+" in the dark")
		}
		b.Quiet()
	}
}
