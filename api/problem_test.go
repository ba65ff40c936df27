package api

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/danielgtaylor/huma/v2"
	"github.com/gin-gonic/gin"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/problem"
	"counterpour/api/service/servicetest"
	"counterpour/api/shape"
	"counterpour/api/wire"
	"counterpour/index"
)

// odd registers an endpoint that misbehaves.
func odd(s *Server, path string, call func(context.Context) (*HealthAnswer, error)) {
	handle(s, huma.Operation{OperationID: path, Method: http.MethodGet, Path: path}, noStore,
		func(ctx context.Context, _ *struct{}) (*HealthAnswer, error) { return call(ctx) })
}

func TestInternalErrors(t *testing.T) {
	s, log := serverFor(t, Options{Timeout: 5 * time.Millisecond})
	odd(s, "/v1/panic", func(context.Context) (*HealthAnswer, error) { panic("a fault at /secret") })
	odd(s, "/v1/error", func(context.Context) (*HealthAnswer, error) { return nil, errors.New("a fault at /secret") })
	odd(s, "/v1/slow", func(ctx context.Context) (*HealthAnswer, error) { <-ctx.Done(); return nil, ctx.Err() })
	s.engine.GET("/half", func(c *gin.Context) { c.String(http.StatusOK, "half"); panic("late") })
	for _, sc := range []scenario{
		{name: "panic", url: "/v1/panic", status: 500, wantNot: []string{"secret"}, want: []string{"logged"}},
		{name: "error", url: "/v1/error", status: 500, wantNot: []string{"secret"}, want: []string{"logged"}},
		{name: "slow", url: "/v1/slow", status: 503, want: []string{"longer than is allowed"}},
		{name: "panic after the answer", url: "/half", status: 200, want: []string{"half"}},
	} {
		sc.run(t, s.Handler())
	}
	assert.Contains(t, log.String(), "secret")
	assert.Contains(t, log.String(), "handler panicked")
	assert.NotContains(t, log.String(), "/v1/slow", "a slow request is no fault of the program")
}

func TestErrAbortHandlerIsRepanicked(t *testing.T) {
	s, _ := serverFor(t, Options{Pages: http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) })})
	assert.PanicsWithValue(t, http.ErrAbortHandler, func() {
		s.Handler().ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil))
	})
}

func TestCoverStopsInTime(t *testing.T) {
	k := servicetest.Demo(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	text := goodText
	_, err := shape.AnswerCover(ctx, k, shape.CoverBody{Draft: shape.Draft{Text: &text}, Missing: wire.NamesOf("gin"), MaxParts: 2, Limit: 10})
	status, _, known := problem.StatusOf(err)
	assert.True(t, known, err)
	assert.Equal(t, http.StatusServiceUnavailable, status)
}

func TestClosedKitchen(t *testing.T) {
	x, err := index.New(servicetest.Demo(t).Catalogue.Profiles()[:5])
	require.NoError(t, err)
	closed := *servicetest.Demo(t)
	kitchen := *closed.Kitchen
	kitchen.Index, closed.Kitchen = x, &kitchen
	require.NoError(t, x.Close())
	s, err := NewServer(always(&closed), Options{})
	require.NoError(t, err)
	for _, sc := range []scenario{
		{name: "ready", url: "/readyz", status: 503, want: []string{"stopping"}},
		{name: "find", url: "/v1/ingredients?q=gin", status: 503},
		{name: "score", url: "/v1/score", body: quote("2 oz gin"), status: 503},
		{name: "health", url: "/healthz", status: 200},
	} {
		sc.run(t, s.Handler())
	}
}
