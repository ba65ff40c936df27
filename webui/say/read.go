package say

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
)

//go:embed english
var embedded embed.FS

// tongue is the folder of the language that the pages speak. Another language is another
// folder with the same files and keys.
const tongue = "english"

// keyed is how a key is written.
var keyed = regexp.MustCompile(`^[a-z0-9-]+$`)

// sentences are those of one file, by key.
type sentences map[string]string

// read reads a file of sentences; there are none in one that is not there.
func read(files fs.FS, at string) (sentences, error) {
	text, err := fs.ReadFile(files, at)
	if errors.Is(err, fs.ErrNotExist) {
		return sentences{}, nil
	}
	if err != nil {
		return nil, err
	}
	all, err := takenApart(string(text))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", at, err)
	}
	return all, nil
}

// takenApart are the sentences of a file.
func takenApart(text string) (sentences, error) {
	all, last := sentences{}, ""
	for n, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if more, goesOn := strings.CutPrefix(line, "\t"); goesOn && last != "" {
			all[last] += "\n" + more
			continue
		}
		key, sentence, found := strings.Cut(line, ": ")
		if _, twice := all[key]; !found || twice || !keyed.MatchString(key) {
			return nil, fmt.Errorf("line %d: %q is not a new key, a colon, a space and a sentence", n+1, line)
		}
		all[key], last = sentence, key
	}
	return all, nil
}

// readAll reads every file of a folder, each key behind the name of its file: "board.touched".
func readAll(files fs.FS, folder string) (sentences, error) {
	names, err := fs.Glob(files, path.Join(folder, "*.txt"))
	if err != nil {
		return nil, err
	}
	all := sentences{}
	for _, at := range names {
		some, err := read(files, at)
		if err != nil {
			return nil, err
		}
		for key, sentence := range some {
			all[strings.TrimSuffix(path.Base(at), ".txt")+"."+key] = sentence
		}
	}
	return all, nil
}
