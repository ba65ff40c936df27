package api

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/problem"
	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/api/service/servicetest"
	"counterpour/data/house"
	"counterpour/flavor"
)

func always(s *service.Snapshot) func() *service.Snapshot {
	return func() *service.Snapshot { return s }
}

// noted is a keeper of a house at rest, which takes any mark and keeps none.
type noted struct{}

func (noted) Mark(context.Context, house.By, marking.Request) error { return nil }

func (noted) Name(context.Context, house.By, service.NameRequest) error { return nil }

func (noted) Taste(context.Context, house.By, service.TasteRequest) error { return nil }

func (noted) Right(_ context.Context, by house.By, r service.RightRequest) error {
	if r.Drink == "unmarked" || by.Actor == "" {
		return flavor.Invalid("drink", r.Drink, "is not marked")
	}
	return nil
}

// serverFor returns a server over the demo house and what it logs.
func serverFor(t testing.TB, opts Options) (*Server, *bytes.Buffer) {
	t.Helper()
	var log bytes.Buffer
	opts.Log = slog.New(slog.NewTextHandler(&log, nil))
	if opts.Timeout == 0 {
		opts.Timeout = time.Minute // a busy machine is no fault of what is tested
	}
	if opts.Keeper == nil {
		opts.Keeper = noted{}
		opts.Editor = func(context.Context) Editor {
			return Editor{By: house.By{Actor: "Wren", At: time.Now()}, MayNote: true, MayEdit: true}
		}
	}
	s, err := NewServer(always(servicetest.Demo(t)), opts)
	require.NoError(t, err)
	return s, &log
}

// scenario is one request and what must come of it.
type scenario struct {
	name    string
	method  string // GET, or POST if there is a body
	url     string
	media   string // of the body; application/json if empty, none if "-"
	body    string
	status  int
	want    []string // what the answer must hold
	wantNot []string
	headers map[string]string
}

func (sc *scenario) request() *http.Request {
	method, body := sc.method, io.Reader(http.NoBody)
	if sc.body != "" {
		body = strings.NewReader(sc.body)
	}
	if method == "" {
		method = http.MethodGet
		if sc.body != "" {
			method = http.MethodPost
		}
	}
	r := httptest.NewRequest(method, sc.url, body)
	switch sc.media {
	case "-":
	case "":
		if method == http.MethodPost {
			r.Header.Set("Content-Type", mediaJSON)
		}
	default:
		r.Header.Set("Content-Type", sc.media)
	}
	return r
}

func (sc *scenario) run(t *testing.T, h http.Handler) {
	t.Run(sc.name, func(t *testing.T) {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, sc.request())
		answer := w.Body.String()
		require.Equal(t, sc.status, w.Code, answer)
		for _, s := range sc.want {
			assert.Contains(t, answer, s)
		}
		for _, s := range append(sc.wantNot, ":null", ".go:") {
			assert.NotContains(t, answer, s)
		}
		for name, value := range sc.headers {
			assert.Contains(t, w.Header().Get(name), value, name)
		}
		assert.Equal(t, "nosniff", w.Header().Get("X-Content-Type-Options"))
		if sc.status >= 400 {
			checkProblem(t, sc.status, w)
		}
	})
}

// checkProblem holds an answer against RFC 9457 and the contract.
func checkProblem(t *testing.T, status int, w *httptest.ResponseRecorder) {
	t.Helper()
	assert.Equal(t, problem.MediaType, w.Header().Get("Content-Type"))
	var fields map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &fields))
	for _, f := range []string{"type", "title", "status", "detail", "errors"} {
		assert.Contains(t, fields, f)
	}
	var p problem.Problem
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &p))
	assert.Equal(t, status, p.Status)
	assert.Equal(t, http.StatusText(status), p.Title)
	assert.NotEmpty(t, p.Detail)
	assert.Less(t, w.Body.Len(), 64<<10)
	for _, e := range p.Errors {
		assert.NotEmpty(t, e.Message)
		assert.NotNil(t, e.Suggest)
	}
}

// quote returns a JSON object with the text of a spec.
func quote(text string) string {
	b, _ := json.Marshal(map[string]string{"text": text})
	return string(b)
}

func pourJSON(pour string) string { return `{"spec":{"pours":[` + pour + `]}}` }

const goodText = "Halyard Sour\n2 oz gin\n3/4 oz lemon juice\n½ oz simple syrup\n2 dashes aromatic bitters\nshake, up"
