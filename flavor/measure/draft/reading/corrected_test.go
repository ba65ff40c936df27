package reading_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/measure/draft/reading"
)

// corrections are how an amount is corrected behind a pour: %[1]d stood there, %[2]d counts. Common
// practice, no source.
var corrections = []string{
	"(hmm %[2]d)", "(no, %[2]d)", "(actually %[2]d)", "(ok %[2]d is better. go %[2]d)", "... no wait, %[1]d was cloying, go %[2]d", "- %[2]d is plenty", ", sorry, %[2]d", ", no wait, make it %[2]d", "- scratch that, %[2]d", "(%[2]d is better)",
	", oops, %[2]d", "(was %[1]d, %[2]d is better)",
}

// corrected is a form of a correction with its amounts.
func corrected(form string, was, now int) string {
	return " " + strings.NewReplacer("%[1]d", strconv.Itoa(was), "%[2]d", strconv.Itoa(now)).Replace(form)
}

// A list with one amount corrected pours what the list pours that was right at once, wherever the
// correction stands and whatever words it is in.
func TestCorrectedAsRightAtOnce(t *testing.T) {
	names := []string{"gin", "lemon juice", "simple syrup", "dry vermouth", "maraschino", "pineapple juice", "orgeat"}
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(2, 5).Draw(r, "pours")
		at := rapid.IntRange(0, n-1).Draw(r, "corrected")
		form := rapid.SampledFrom(corrections).Draw(r, "form")
		sign := rapid.SampledFrom([]string{", ", "\n"}).Draw(r, "sign")
		first := rapid.Bool().Draw(r, "amount first")
		pour := func(name string, ml int) string {
			if first {
				return fmt.Sprintf("%d ml %s", ml, name)
			}
			return fmt.Sprintf("%s %d ml", name, ml)
		}
		var wrong, right []string
		for i, name := range names[:n] {
			was := rapid.IntRange(20, 40).Draw(r, "was")
			now := was
			if i == at {
				for now == was {
					now = rapid.IntRange(20, 40).Draw(r, "now")
				}
			}
			right = append(right, pour(name, now))
			if i == at {
				wrong = append(wrong, pour(name, was)+corrected(form, was, now))
			} else {
				wrong = append(wrong, pour(name, was))
			}
		}
		text, plain := strings.Join(wrong, sign)+"\nshake, up", strings.Join(right, sign)+"\nshake, up"
		got, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		want, err := reading.Read(plain, wholeCatalogue(t))
		require.NoError(t, err, plain)
		require.Len(t, got.Pours, len(want.Pours), text)
		for i := range want.Pours {
			assert.Same(t, want.Pours[i].Profile, got.Pours[i].Profile, text)
			assert.InDelta(t, want.Pours[i].ML, got.Pours[i].ML, 1e-9, text)
		}
		assert.Greater(t, len(got.Notes), len(want.Notes), "%s is told", text)
	})
}

// What is taken back and stands for nothing that is poured is asked about, and so is an amount of nothing:
// common practice, no source.
func TestTakenBackForNothing(t *testing.T) {
	for _, text := range []string{"gin 1 oz, sweet vermouth 1 oz... wait both 1.5. stir coupe", "gin 50 no wait lemon, simple 20, shake", "gin 30, dry vermouth 30, took something out, stir, up", "gin 45 (45 looked short but fine), lemon 20, raspberry syrup 15, shake, up"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
