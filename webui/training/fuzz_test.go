package training

import (
	"net/http/httptest"
	"testing"
	"unicode/utf8"
)

// Whatever a browser says of who trains, it is nobody, a word of our form, or a name
// that can be read.
func FuzzWhoTrains(f *testing.F) {
	f.Add(asText.EncodeToString([]byte("Ada")), "00112233445566778899aabbccddeeff")
	f.Add("/w==", "")
	f.Fuzz(func(t *testing.T, name, word string) {
		r := httptest.NewRequest("GET", trainingPath, nil)
		r.Header.Set("Cookie", nameCookie+"="+name+"; "+learnerCookie+"="+word)
		who := personOf(r)
		if !utf8.ValidString(who.Name) || utf8.RuneCountInString(who.Name) > maxName || who.Name != "" && who.Word != "" {
			t.Fatalf("%q by %q and %q", who, name, word)
		}
	})
}
