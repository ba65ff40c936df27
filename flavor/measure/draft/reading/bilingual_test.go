package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What is named in two tongues or scripts is poured once, and told; two things that are named so
// are asked about. Common practice, no source.
func TestNamedTwice(t *testing.T) {
	x := wholeCatalogue(t)
	const first, last = "25 ml lemon juice\n20 ml simple syrup\n", "\nshake, up"
	for text, id := range map[string]string{
		"Ginebra / Gin 4 cl":          "london-dry-gin",
		"5 cl rhum blanc / white rum": "white-rum",
		"ジン Gin 50ml":                 "london-dry-gin",
		"50 ml gin ジン":                "london-dry-gin",
		"джин gin 50 мл":              "london-dry-gin",
		"50 ml gin (ginebra)":         "london-dry-gin",
		"50 ml pigwa (quince) syrup":  "quince-syrup",
		"50 ml gin / vodka":           "",
		"50 ml gin ラム":                "", // rum
		"50 ml ノンアルコール gin":           "", // without alcohol
		"50 ml 아몬드 gin":               "", // almond
		"50 ml gin Миндальный":        "", // almond
		"50 ml ピーナッツ gin":             "", // peanut
		"50 ml gin (vodka)":           "",
		"50 ml gin / 20 ml ginebra":   "",
	} {
		s, err := reading.Read(first+text+last, x)
		if id == "" {
			assert.True(t, err != nil || len(s.Pours) == 4, text)
			continue
		}
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, 3, text)
			assert.Equal(t, id, s.Pours[2].Profile.ID, text)
			assert.Contains(t, strings.Join(s.Notes, "\n"), "is read as", text)
		}
	}
	s, err := reading.Read("Gin 50 ml\nCitron / Lemon juice 25 ml\nSucre / Sugar syrup 20 ml\nAu shaker / Shake. Coupe", x)
	if assert.NoError(t, err) {
		assert.Len(t, s.Pours, 3)
		assert.Equal(t, "shake", string(s.Method))
	}
}
