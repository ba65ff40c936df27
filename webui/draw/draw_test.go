package draw

import (
	"encoding/xml"
	"io"
	"strings"

	"github.com/stretchr/testify/require"
)

// wellFormed holds a drawing to be XML that a browser reads to its end.
func wellFormed(t require.TestingT, drawing string) {
	d := xml.NewDecoder(strings.NewReader(drawing))
	for {
		_, err := d.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err, drawing)
	}
}
