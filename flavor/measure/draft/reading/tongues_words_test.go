package reading_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// What bars write in Hindi, Korean and in numbers of other tongues. Common practice, no source.
func TestWordsOfBars(t *testing.T) {
	x := wholeCatalogue(t)
	for text, want := range map[string]string{
		"rum 60ml\nnimbu 20ml\ncheeni 15ml\nshake karo\ncoupe":                                        "white-rum 60, lime-juice 20, simple-syrup 15 | shake up",
		"gin 45ml, nimbu ras 20ml, adrak syrup 15ml, soda bharo, lamba glass, baraf":                  "london-dry-gin 45, lime-juice 20, ginger-syrup 15, soda-water 90 | build long",
		"진 45ml\n레몬즙 20ml\n설탕시럽 15ml\n셰이크, 쿠페":                                                        "london-dry-gin 45, lemon-juice 20, simple-syrup 15 | shake up",
		"보드카 40ml\n자몽주스 60ml\n탄산수 적당량\n빌드, 하이볼 잔, 얼음":                                                 "vodka 40, grapefruit-juice 60, soda-water 90 | build long",
		"fünfzig gin, fünfundzwanzig Zitrone, fünfzehn Zucker, shaken, coupe":                         "london-dry-gin 50, lemon-juice 25, simple-syrup 15 | shake up",
		"cuarenta y cinco ml ron blanco, veinte ml lima, quince ml jarabe, agitar":                    "white-rum 45, lime-juice 20, simple-syrup 15 | shake up",
		"cinquanta ml gin, venticinque ml succo di limone, quindici ml sciroppo, shakerare, coppetta": "london-dry-gin 50, lemon-juice 25, simple-syrup 15 | shake up",
	} {
		s, err := reading.Read(text, x)
		if !assert.NoError(t, err, text) {
			continue
		}
		var pours []string
		for _, p := range s.Pours {
			pours = append(pours, fmt.Sprintf("%s %.0f", p.Profile.ID, p.ML))
		}
		assert.Equal(t, want, fmt.Sprintf("%s | %s %s", strings.Join(pours, ", "), s.Method, s.Service), text)
	}
	for _, text := range []string{"rum zork ml, 20 ml lemon, 15 ml sugar, shake", "Gin cinquante, 2 drops saline, stir"} { // nothing is lost
		s, err := reading.Read(text, x)
		assert.True(t, err != nil || s.Has(func(p *flavor.Profile) bool { return p.Base() }), text)
	}
}
