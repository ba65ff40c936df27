package api

import (
	"encoding/json"
	"net/http/httptest"
	"strings"
	"testing"
)

// FuzzScore checks that every body is answered without an internal error.
func FuzzScore(f *testing.F) {
	for _, seed := range []string{goodText, "-2 oz gin", "2 oz moon dust\nsheke", "½ oz  \u0000", "name: 12\n1e9 ml gin", "2 oz gin\n2 slices orange\ntop soda"} {
		f.Add(seed, true)
	}
	for _, seed := range []string{`{"text":"2 oz gin"}`, `{"spec":{"pours":[{"ingredient":"gin","amount":2,"unit":"oz"}]}}`,
		`{"spec":{"pours":[{"ingredient":"gin","amount":1e308,"unit":"oz"}]}}`, `[[[[`, `{"text":"a","text":"b"}`, "\xff", `{"a":{"b":[1,{"c":null}]}}`} {
		f.Add(seed, false)
	}
	s, _ := serverFor(f, Options{})
	h := s.Handler()
	f.Fuzz(func(t *testing.T, body string, text bool) {
		if text {
			body = quote(body)
		}
		r := httptest.NewRequest("POST", "/v1/score", strings.NewReader(body))
		r.Header.Set("Content-Type", mediaJSON)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code >= 500 {
			t.Fatalf("%d: %s", w.Code, w.Body)
		}
		if !json.Valid(w.Body.Bytes()) {
			t.Fatalf("not JSON: %s", w.Body)
		}
	})
}

// FuzzQuery checks that every query is answered without an internal error.
func FuzzQuery(f *testing.F) {
	for _, seed := range []string{"q=gin&limit=5", "abv_max=1e999", "limit=-1", "q=%ff", "sort=&avoid=eggs,milk&avoid=", "q=a&q=b", ";;&&=", "bitter_min=NaN"} {
		f.Add(seed)
	}
	s, _ := serverFor(f, Options{})
	h := s.Handler()
	f.Fuzz(func(t *testing.T, query string) {
		for _, path := range []string{"/v1/ingredients", "/v1/templates"} {
			r := httptest.NewRequest("GET", path, nil)
			r.URL.RawQuery = query
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			if w.Code >= 500 {
				t.Fatalf("%d: %s", w.Code, w.Body)
			}
			if !json.Valid(w.Body.Bytes()) {
				t.Fatalf("not JSON: %s", w.Body)
			}
		}
	})
}
