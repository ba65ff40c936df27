package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A stop or a comma right behind a word parts it from its amount, but for a fraction of an ounce; what may be
// either is asked for.
func TestSignsRightBehindNames(t *testing.T) {
	for text, want := range map[string]string{
		"gin.6cl, lemon.3cl, sugar syrup.2cl":    "gin 60 + lemon 30 + sugar syrup 20",
		"gin.6cl lemon.3cl sugar syrup.2cl":      "gin 60 + lemon 30 + sugar syrup 20",
		"Gin.60ml\nLemon.30ml\nSugar syrup.20ml": "Gin 60 + Lemon 30 + Sugar syrup 20",
		"gin,6cl,lemon,3cl,sugar syrup,2cl":      "gin 60 + lemon 30 + sugar syrup 20",
		"gin.75oz, lemon.5oz":                    "gin 22.18 + lemon 14.79",
		"gin.5 lemon.5 honey.5":                  "gin 14.79 + lemon 14.79 + honey 14.79",
		"gin ,5 oz, lemon ,5 oz, honey ,5 oz":    "gin 14.79 + lemon 14.79 + honey 14.79",
		"highball,rye,45 ml,soda,120 ml":         "rye 45 + soda 120",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{"gin.2oz lemon.1oz simple.75oz", "gin.2 oz, lemon.1 oz"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}
