package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The list of sentences holds a sentence of each place where visible ones are made:
// a page, what it says, Go code, a record's name, aliases and making, a caution and
// what it says of a drink without alcohol, and the name of a material.
func TestEveryPlaceOfSentencesIsListed(t *testing.T) {
	paths := []string{"webui/templates/stock.html", "webui/say/english/pages/tonight.txt", "flavor/measure/draft/reader.go", "data/catalogue/cautions.toml", "data/catalogue/bitters.toml", "data/catalogue/saline.toml"}
	run := exec.Command("go", append([]string{"run", ".ci/sentences.go"}, paths...)...)
	run.Dir = "../.."
	out, err := run.CombinedOutput()
	require.NoError(t, err, string(out))
	for _, want := range []string{
		"html:", "tonight.txt:", "No connection; the page keeps trying.", "write at least one, such as", "name: aromatic bitters", "aliases: orange flower bitters",
		"making: Dissolve", "text: Alcohol harms an unborn child", "without_alcohol: ", "materials: pecan",
	} {
		assert.True(t, strings.Contains(string(out), want), want)
	}
}
