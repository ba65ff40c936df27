package draw

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"rsc.io/qr"
)

// Every dark square of the code is in the drawing, and no other.
func TestCodeDrawsEveryModule(t *testing.T) {
	const text = "https://bar.example/specs/spindrift"
	svg, err := CodeSVG("share", "A <code>", text)
	require.NoError(t, err)
	assert.Contains(t, string(svg), "A &lt;code&gt;")
	code, err := qr.Encode(text, qr.M)
	require.NoError(t, err)
	drawn := map[string]bool{}
	for _, run := range regexp.MustCompile(`M(\d+) (\d+)h(\d+)v1`).FindAllStringSubmatch(string(svg), -1) {
		x, _ := strconv.Atoi(run[1])
		y, _ := strconv.Atoi(run[2])
		n, _ := strconv.Atoi(run[3])
		for i := range n {
			drawn[fmt.Sprint(x+i-quiet, y-quiet)] = true
		}
	}
	for y := range code.Size {
		for x := range code.Size {
			assert.Equal(t, code.Black(x, y), drawn[fmt.Sprint(x, y)], "%d, %d", x, y)
		}
	}
	_, err = CodeSVG("share", "", strings.Repeat("x", 5000))
	assert.Error(t, err)
}
