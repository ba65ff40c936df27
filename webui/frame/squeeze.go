package frame

import (
	"bytes"
	"path"
	"regexp"
)

var (
	cssComment = regexp.MustCompile(`(?s)/\*.*?\*/`)
	cssMargin  = regexp.MustCompile(`(?m)^[ \t]+|[ \t]+$`)
	jsComment  = regexp.MustCompile(`(?m)^[ \t]*//.*\n`)
	emptyLines = regexp.MustCompile(`\n{2,}`)
)

// squeezed is a file of ours without what only its readers in the repository need: comments,
// and in a style sheet the margins. A script keeps all that is beside code. What others
// wrote is served as it came, with its licence.
func squeezed(name string, body []byte) []byte {
	if path.Base(path.Dir(name)) == "vendor" {
		return body
	}
	switch path.Ext(name) {
	case ".css":
		body = cssMargin.ReplaceAll(cssComment.ReplaceAll(body, nil), nil)
	case ".js":
		body = jsComment.ReplaceAll(body, nil)
	default:
		return body
	}
	return bytes.TrimLeft(emptyLines.ReplaceAll(body, []byte("\n")), "\n")
}
