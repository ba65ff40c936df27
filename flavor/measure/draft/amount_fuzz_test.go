package draft

import (
	"math"
	"testing"
)

// Whatever is typed as an amount, it is one that can be counted with, or none.
func FuzzParseAmount(f *testing.F) {
	for _, s := range []string{"2 oz", "½ oz", "22,5 ml", "1 1/2", "2–3 dashes", "1/0", "1e9", "NaN", "-2", "½½", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		amount, _, ok := ParseAmount(text)
		if ok && (math.IsNaN(amount) || math.IsInf(amount, 0) || amount < 0) {
			t.Fatalf("%q is %v", text, amount)
		}
	})
}
