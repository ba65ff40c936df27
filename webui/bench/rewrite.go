package bench

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
)

// rewrite returns a draft with the pours of the spec that was read from it
// turned into those of another: the name, the remarks and every word that need
// not change stay as they were written. Where that does not read back as the
// wanted pours, the whole draft is written anew.
func rewrite(text string, from, to *flavor.Spec) string {
	return edit.Rewrite(text, from, to).String()
}
