package say

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
)

// place of a sentence in a template, by its key.
var place = regexp.MustCompile(`\{\{say "([a-z0-9-]+)"\}\}`)

// InTemplate puts the sentences of a template in their places. It is called by its path, such
// as templates/board.html. This is done before the template is parsed, so that
// whatever a sentence holds is escaped as it stands there. It fails if a sentence is missing.
func InTemplate(name, source string) (string, error) { return inTemplate(embedded, name, source) }

func inTemplate(files fs.FS, name, source string) (string, error) {
	at := path.Join(tongue, "pages", strings.TrimSuffix(strings.TrimPrefix(name, "templates/"), ".html")+".txt")
	all, err := read(files, at)
	if err != nil {
		return "", err
	}
	var missing []string
	out := place.ReplaceAllStringFunc(source, func(mark string) string {
		key := place.FindStringSubmatch(mark)[1]
		sentence, found := all[key]
		if !found {
			missing = append(missing, key)
		}
		return sentence
	})
	if len(missing) > 0 {
		return "", fmt.Errorf("%s has no sentence %q; write it there", at, missing[0])
	}
	return out, nil
}
