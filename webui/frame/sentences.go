package frame

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
)

// tongue is the folder of templates that holds the sentences, one file for each template
// and as it is called. Another language is another folder with the same keys.
const tongue = "english"

// place of a sentence in a template, by its key.
var placeOfSentence = regexp.MustCompile(`\{\{say "([a-z0-9-]+)"\}\}`)

// sentences are those of one template, by key.
type sentences map[string]string

// readSentences reads a file of sentences: a line each with its key, a colon and the
// sentence; a line that begins with a tab goes on with the one before. A sentence is
// written as in a template, with what is filled in and what is stressed or linked.
func readSentences(text string) (sentences, error) {
	all, last := sentences{}, ""
	for n, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if more, goesOn := strings.CutPrefix(line, "\t"); goesOn && last != "" {
			all[last] += "\n" + more
			continue
		}
		key, sentence, found := strings.Cut(line, ": ")
		if _, twice := all[key]; !found || twice || !placeOfSentence.MatchString(`{{say "`+key+`"}}`) {
			return nil, fmt.Errorf("line %d: %q is not a new key, a colon, a space and a sentence", n+1, line)
		}
		all[key], last = sentence, key
	}
	return all, nil
}

// filled reads a template and puts its sentences in their places. This is done before the
// template is parsed, so that whatever a sentence holds is escaped as it stands there.
func filled(files fs.FS, name string) (string, error) {
	source, err := fs.ReadFile(files, name)
	if err != nil {
		return "", err
	}
	all, at := sentences{}, sentencesOf(name)
	switch text, err := fs.ReadFile(files, at); {
	case errors.Is(err, fs.ErrNotExist): // a template without words
	case err != nil:
		return "", err
	default:
		if all, err = readSentences(string(text)); err != nil {
			return "", fmt.Errorf("%s: %w", at, err)
		}
	}
	var missing []string
	out := placeOfSentence.ReplaceAllStringFunc(string(source), func(mark string) string {
		key := placeOfSentence.FindStringSubmatch(mark)[1]
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

// sentencesOf is the file of the sentences of a template.
func sentencesOf(template string) string {
	inside := strings.TrimPrefix(template, "templates/")
	return path.Join("templates", tongue, strings.TrimSuffix(inside, ".html")+".txt")
}
