package speech

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/words/token"
)

// Numbers are as their tongues say them; words that mean something else in a draft are none.
func TestForeignNumbers(t *testing.T) {
	for text, want := range map[string]float64{
		"fünfundvierzig": 45, "fünfzehn": 15, "vijfentwintig": 25, "tweeëntwintig": 22, "quarante-cinq": 45, "soixante-dix": 70, "venticinque": 25, "quarantuno": 41, "cuarenta y cinco": 45,
		"veinticinco": 25, "quarenta e cinco": 45, "trettiofem": 35, "førtifem": 45, "femogtyve": 25, "halvtreds": 50, "czterdzieści pięć": 45, "pachas": 50,
		"gin": 0, "seize": 0, "onze": 0, "": 0,
	} {
		toks := token.Lex(nil, text, 0, len(text))
		v, n := foreignAt(toks)
		assert.Equal(t, want, v, text)
		assert.Equal(t, want > 0, n == len(toks) && n > 0, text)
	}
}
