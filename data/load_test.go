package data

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// soundFiles are a catalogue of one record without a fault.
func soundFiles() map[string]string {
	return map[string]string{
		"blends.toml":    "version = 1\n[sugars]\nnone = {}\nsucrose = { sucrose = 1.0 }\n[acids]\nnone = {}\n",
		"materials.toml": "version = 1\n[materials]\n\"vanilla\" = \"vanilla 1\"\n\"curd\" = \"cream 1; allergens: milk; animal: milk; cautions: curdles\"\n",
		"cautions.toml":  "version = 1\n[[caution]]\nkey = \"curdles\"\ntext = \"It curdles.\"\nsource = \"common practice\"\nstatus = \"common practice\"\n",
		"liqueur.toml": `version = 1
class = "liqueur"

[[ingredient]]
id = "a-bottle"
name = "a bottle"
abv = "20 ± 1 | from memory"
sugar = "140 ± 5 | from memory"
sugars = "sucrose"
acid = "0 ± 0 | common practice"
acids = "none"
bitter = "0 ± 0 | common practice"
texture = "30 ± 1 | common practice"
fat = "20 ± 1 | from memory"
smells_of = "vanilla 10 | ± 25 % | from memory"
made_with = ["curd"]
allergens = []
animal = ["insect"]
yields = ["dash 0.8 ± 0.2 | common practice"]
`,
	}
}

func loadFiles(files map[string]string) (*Catalogue, error) {
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return Load(fsys)
}

func TestLoadSoundFiles(t *testing.T) {
	c, err := loadFiles(soundFiles())
	require.NoError(t, err)
	p, ok := c.ByID("a-bottle")
	require.True(t, ok)
	assert.Equal(t, []string{"milk", "insect"}, p.Animal)
	assert.Equal(t, []string{"curdles"}, p.Cautions)
}

// Every fault is an error that names the file and what is wrong in it.
func TestLoadRefuses(t *testing.T) {
	for _, c := range []struct {
		file, old, written string
		want               string
	}{
		{"liqueur.toml", "20 ± 1", "NaN ± 1", `"NaN" is not a number`},
		{"liqueur.toml", "20 ± 1", "20 ± Inf", `"Inf" is not a number`},
		{"liqueur.toml", "20 ± 1", "-2 ± 1", "must be a finite number, zero or more"},
		{"liqueur.toml", "20 ± 1", "120 ± 1", "more than the most possible, 100"},
		{"liqueur.toml", "20 ± 1", "20", "has no spread"},
		{"liqueur.toml", "20 ± 1 | from memory", "20 ± 1 | from hearsay", "must be one of"},
		{"liqueur.toml", "20 ± 1 | from memory", "20 ± 1 | published", "must name its source"},
		{"liqueur.toml", `sugars = "sucrose"`, `sugars = "none"`, "field sugars: is none"},
		{"liqueur.toml", `fat = "20`, `fat = "40`, "more than the texture it is part of"},
		{"liqueur.toml", "vanilla 10", "vanilla NaN", "must end in a number"},
		{"liqueur.toml", "vanilla 10", "vanilla -1", "must end in a number"},
		{"liqueur.toml", "vanilla 10", "vanilla 2000", "more than the most possible, 1000"},
		{"liqueur.toml", "± 25 %", "± NaN %", "must be between ± 0 % and ± 100 %"},
		{"liqueur.toml", "vanilla 10", "moonlight 10", `material "moonlight" is not known`},
		{"liqueur.toml", `["curd"]`, `["moonlight"]`, `material "moonlight" is not known`},
		{"liqueur.toml", "allergens = []\n", "", "field allergens: is missing"},
		{"liqueur.toml", "allergens = []", `allergens = ["moonlight"]`, "is not an allergen known here"},
		{"liqueur.toml", `["insect"]`, `["insects"]`, `field animal: "insects" is no word for what comes from animals`},
		{"liqueur.toml", "dash 0.8", "oz 0.8", "takes no yield"},
		{"liqueur.toml", "sugar = \"140", "sugar = \"1500", "leaves no room for water"},
		{"liqueur.toml", `id = "a-bottle"`, `id = "A bottle"`, "must be lower-case words joined by hyphens"},
		{"liqueur.toml", `class = "liqueur"`, `class = "moonlight"`, "is not a class"},
		{"liqueur.toml", "version = 1", "version = 2", "this program reads version 1"},
		{"liqueur.toml", "yields", "yeilds", `field "ingredient.yeilds" is not known`},
		{"materials.toml", "animal: milk", "animal: cow", `"cow" is no word for what comes from animals`},
		{"materials.toml", "vanilla 1\"", "vanilla NaN\"", "must end in a number"},
		{"materials.toml", "vanilla 1\"", "vanilla 0.5\"", "they must sum to 1"},
		{"materials.toml", "cautions: curdles", "cautions: sours", `caution "sours" is not in cautions.toml`},
		{"blends.toml", "sucrose = 1.0", "sucrose = nan", "is not from 0 to 1"},
		{"blends.toml", "sucrose = 1.0", "sucrose = inf", "is not from 0 to 1"},
		{"blends.toml", "sucrose = 1.0", "sucrose = 0.9", "must sum to 1"},
	} {
		files := soundFiles()
		require.Contains(t, files[c.file], c.old)
		files[c.file] = strings.Replace(files[c.file], c.old, c.written, 1)
		_, err := loadFiles(files)
		assert.ErrorContains(t, err, c.want, "%s: %s", c.file, c.written)
	}
}
