package api

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/gin-gonic/gin"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/servicetest"
	"counterpour/api/shape"
)

// benchText returns a draft that nobody has asked for before: its amount of gin is
// unique. The syrup decides whether it is balanced.
func benchText(n, syrupML int) string {
	return fmt.Sprintf("%d.%04d ml gin\n22.5 ml lemon juice\n%d ml simple syrup\nshake, up", 55+n/10000%10, n%10000, syrupML)
}

// BenchmarkScoreEndpoint scores drafts that are new each time, balanced and not, and one
// that is repeated.
func BenchmarkScoreEndpoint(b *testing.B) {
	for _, c := range []struct {
		name    string
		syrupML int
		again   bool
	}{{"balanced", 22, false}, {"with fixes", 45, false}, {"again", 22, true}} {
		b.Run(c.name, func(b *testing.B) {
			s, _ := serverFor(b, Options{})
			benchmarkPost(b, s.Handler(), "/v1/score", func(i int) string {
				if c.again {
					i = 0
				}
				return quote(benchText(i, c.syrupML))
			})
		})
	}
}

// BenchmarkBareHandler is the baseline: a router that decodes the body and writes a fixed
// answer as JSON.
func BenchmarkBareHandler(b *testing.B) {
	a, err := shape.AnswerScore(b.Context(), servicetest.Demo(b), shape.ScoreBody{Draft: written(goodText)})
	require.NoError(b, err)
	bare := gin.New()
	bare.POST("/v1/score", func(c *gin.Context) {
		var body shape.ScoreBody
		if err := c.ShouldBindJSON(&body); err != nil {
			c.Status(http.StatusBadRequest)
			return
		}
		c.JSON(http.StatusOK, a)
	})
	benchmarkPost(b, bare, "/v1/score", func(int) string { return quote(goodText) })
}

func BenchmarkCoverEndpoint(b *testing.B) {
	s, _ := serverFor(b, Options{})
	for _, parts := range []string{"1", "2"} {
		b.Run(parts, func(b *testing.B) {
			body := strings.TrimSuffix(quote(goodText), "}") + `,"missing":"simple syrup","max_parts":` + parts + "}"
			benchmarkPost(b, s.Handler(), "/v1/cover", func(int) string { return body })
		})
	}
}

// benchmarkPost sends the i-th body the i-th time.
func benchmarkPost(b *testing.B, h http.Handler, path string, body func(i int) string) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		r := httptest.NewRequest("POST", path, strings.NewReader(body(i)))
		r.Header.Set("Content-Type", mediaJSON)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != 200 {
			b.Fatal(w.Body)
		}
	}
}
