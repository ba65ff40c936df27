package webui_test

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/png"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

var updateIcons = flag.Bool("update-icons", false, "draws static/icon-*.png anew")

// The jigger of icon.svg, in its 32 units: a large cup over a small one, on a ground
// that fills the square, since phones cut icons to their own shape.
var (
	ground    = color.NRGBA{0x1d, 0x17, 0x12, 0xff}
	largeCup  = []point{{8, 5}, {24, 5}, {18, 16}, {14, 16}}
	smallCup  = []point{{14, 16}, {18, 16}, {23, 27}, {9, 27}}
	largeTint = color.NRGBA{0xf2, 0xe6, 0xd0, 0xff}
	smallTint = color.NRGBA{0xe9, 0xa7, 0x5a, 0xff}
)

type point struct{ x, y float64 }

// within reports whether a point is in a convex shape whose corners go clockwise.
func within(shape []point, p point) bool {
	for i, a := range shape {
		b := shape[(i+1)%len(shape)]
		if (b.x-a.x)*(p.y-a.y)-(b.y-a.y)*(p.x-a.x) < 0 {
			return false
		}
	}
	return true
}

// drawIcon draws the icon with so many dots a side, each the mean of samples.
func drawIcon(side int) *image.NRGBA {
	const samples = 4 // a side of each dot
	img := image.NewNRGBA(image.Rect(0, 0, side, side))
	for y := range side {
		for x := range side {
			var sum [3]int
			for s := range samples * samples {
				at := point{(float64(x) + (float64(s%samples)+0.5)/samples) * 32 / float64(side), (float64(y) + (float64(s/samples)+0.5)/samples) * 32 / float64(side)}
				c := ground
				if within(largeCup, at) {
					c = largeTint
				} else if within(smallCup, at) {
					c = smallTint
				}
				sum[0], sum[1], sum[2] = sum[0]+int(c.R), sum[1]+int(c.G), sum[2]+int(c.B)
			}
			const n = samples * samples
			img.SetNRGBA(x, y, color.NRGBA{uint8(sum[0] / n), uint8(sum[1] / n), uint8(sum[2] / n), 0xff})
		}
	}
	return img
}

// The icons of a phone's home screen are the jigger, in the sizes that phones ask for,
// and every page names them.
func TestIconsOfTheHomeScreen(t *testing.T) {
	pages := webuitest.NewPages(t)
	for _, side := range []int{180, 192, 512} {
		name := "icon-" + strconv.Itoa(side) + ".png"
		want := drawIcon(side)
		if *updateIcons {
			var b bytes.Buffer
			require.NoError(t, (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, want))
			require.NoError(t, os.WriteFile(filepath.Join("static", name), b.Bytes(), 0o644))
			continue
		}
		w := webuitest.Get(pages, "/static/"+name, "")
		require.Equal(t, http.StatusOK, w.Code, name)
		assert.Equal(t, "image/png", w.Header().Get("Content-Type"))
		got, err := png.Decode(w.Body)
		require.NoError(t, err, name)
		require.Equal(t, want.Bounds(), got.Bounds())
		for _, at := range []image.Point{{0, 0}, {side / 2, side / 4}, {side / 2, side * 3 / 4}, {side / 4, side / 2}} {
			assert.Equal(t, color.NRGBAModel.Convert(want.At(at.X, at.Y)), color.NRGBAModel.Convert(got.At(at.X, at.Y)), "%s at %v", name, at)
		}
	}
	page := webuitest.Get(pages, "/stock", "").Body.String()
	assert.Contains(t, page, `rel="apple-touch-icon"`)
	assert.Contains(t, page, `name="theme-color"`)
	manifest := webuitest.Get(pages, "/static/bar.webmanifest", "").Body.String()
	for _, size := range []string{"192x192", "512x512", "maskable"} {
		assert.Contains(t, manifest, size)
	}
}
