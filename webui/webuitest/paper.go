package webuitest

import (
	"bytes"
	"math"
	"strings"

	"github.com/chromedp/chromedp"
	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/require"
)

// Sheet is a sheet of paper as a printer gets it.
type Sheet struct {
	Size string // A4, A5 or A6; empty if it is none of them
	Text string // in reading order, every blank one space
}

// paperMM is the width and height of upright sheets, in mm (ISO 216).
var paperMM = map[string][2]float64{"A4": {210, 297}, "A5": {148, 210}, "A6": {105, 148}}

// Printed is what the page puts on paper, a sheet each, read from the PDF itself.
func (b *Browser) Printed() []Sheet {
	b.T.Helper()
	file, err := chromedp.Run(b.Ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(b.T, err)
	reader, err := pdf.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(b.T, err)
	var sheets []Sheet
	for i := range reader.NumPage() {
		page := reader.Page(i + 1)
		text, err := page.GetPlainText(nil)
		require.NoError(b.T, err)
		sheets = append(sheets, Sheet{sizeOf(page.V.Key("MediaBox")), plainPaper(text)})
	}
	require.NotEmpty(b.T, sheets, "something is printed")
	return sheets
}

// OnPaper joins the text of sheets.
func OnPaper(sheets []Sheet) string {
	text := make([]string, len(sheets))
	for i, s := range sheets {
		text[i] = s.Text
	}
	return strings.Join(text, " ")
}

// sizeOf names the sheet of a box of left, bottom, right and top, in points.
func sizeOf(box pdf.Value) string {
	const pointsPerMM, near = 72 / 25.4, 1.0 // mm; a browser rounds a sheet to whole pixels
	for name, mm := range paperMM {
		wide, high := (box.Index(2).Float64()-box.Index(0).Float64())/pointsPerMM, (box.Index(3).Float64()-box.Index(1).Float64())/pointsPerMM
		if math.Abs(wide-mm[0]) < near && math.Abs(high-mm[1]) < near {
			return name
		}
	}
	return ""
}

// plainPaper parts letters that a font joins, and makes every blank one space.
func plainPaper(text string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("ﬀ", "ff", "ﬁ", "fi", "ﬂ", "fl", "ﬃ", "ffi", "ﬄ", "ffl").Replace(text)), " ")
}
