package draw

import (
	"fmt"
	htmltemplate "html/template"
	"strings"

	"rsc.io/qr"
)

// quiet is the width of the white margin around a code, in modules (ISO/IEC 18004; from
// memory).
const quiet = 4

// CodeSVG draws a text as a QR code in an SVG element. It is dark on white in any colour
// scheme, since cameras need that. It fails if the text is too long.
func CodeSVG(id, title, text string) (htmltemplate.HTML, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return "", fmt.Errorf("draw: a code of %d bytes: %w", len(text), err)
	}
	var b strings.Builder
	esc := htmltemplate.HTMLEscapeString
	side := code.Size + 2*quiet
	fmt.Fprintf(&b, `<svg class="code" role="img" aria-labelledby="%[1]s-title" viewBox="0 0 %[2]d %[2]d" xmlns="http://www.w3.org/2000/svg" shape-rendering="crispEdges">`+"\n", esc(id), side)
	fmt.Fprintf(&b, "<title id=\"%s-title\">%s</title>\n<rect width=\"%d\" height=\"%[3]d\" fill=\"#fff\"/>\n<path fill=\"#000\" d=\"", esc(id), esc(title), side)
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			run := x
			for run < code.Size && code.Black(run, y) {
				run++
			}
			if run > x {
				fmt.Fprintf(&b, "M%d %dh%dv1h-%[3]dz", x+quiet, y+quiet, run-x)
				x = run
			}
		}
	}
	b.WriteString("\"/></svg>\n")
	return htmltemplate.HTML(b.String()), nil
}
