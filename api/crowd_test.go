package api

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/servicetest"
)

// While all places are taken, a search is refused before its draft is read, and light
// requests are answered. Afterwards the draft's fault is reported.
func TestOverloadIsRefusedBeforeReading(t *testing.T) {
	full := admission.New(1)
	var leaves []func()
	for {
		_, leave, err := full.Reserve(t.Context())
		if err != nil {
			break
		}
		leaves = append(leaves, leave)
	}
	house := *servicetest.Demo(t)
	house.Kitchen = house.Admitting(full)
	s, err := NewServer(func() *service.Snapshot { return &house }, Options{})
	require.NoError(t, err)
	post := func(path, body string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(body))
		r.Header.Set("Content-Type", mediaJSON)
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, r)
		return w
	}
	bad := `{"text":"2 oz moon dust","missing":"moon dust"}`
	for path := range searching {
		w := post(path, bad)
		assert.Equal(t, http.StatusServiceUnavailable, w.Code, "%s: %s", path, w.Body)
		assert.Equal(t, "1", w.Header().Get("Retry-After"), path)
	}
	assert.Equal(t, http.StatusOK, post("/v1/score", quote(goodText)).Code)
	for _, leave := range leaves {
		leave()
	}
	for range len(leaves) + 1 { // no answer keeps a place
		w := post("/v1/cover", bad)
		require.Equal(t, http.StatusUnprocessableEntity, w.Code, w.Body)
	}
}
