package frame

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"testing"

	"counterpour/api/admission"
	"counterpour/data/house"

	"github.com/stretchr/testify/assert"
)

func TestCancelledRequestGetsNoAnswer(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	p := &Frame{}
	w := httptest.NewRecorder()
	p.fail(w, httptest.NewRequest(http.MethodPost, "/", nil).WithContext(ctx), fmt.Errorf("cover: %w", ctx.Err()))
	assert.Empty(t, w.Body.String())
}

func TestTroubleOf(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range troubles() {
		got := TroubleOf(fmt.Errorf("doing a thing: %w", k.kind))
		assert.Equal(t, k.Trouble, got)
		assert.GreaterOrEqual(t, got.Status, 400)
		assert.NotEmpty(t, got.Title)
		assert.NotEmpty(t, got.Text)
		assert.False(t, seen[got.Title], "%q twice", got.Title)
		seen[got.Title] = true
	}
	assert.Equal(t, http.StatusInternalServerError, TroubleOf(errors.New("anything else")).Status)
}

// A store that takes no write for now is told as such, not as a break of ours.
func TestStoreErrorsKeepTheirMessage(t *testing.T) {
	for _, kind := range []error{house.ErrFull, house.ErrReadOnly, house.ErrBusy, house.ErrUnavailable} {
		got := TroubleOf(fmt.Errorf("mark: %w", &house.Error{Kind: kind, Op: "write", Message: "there is no room left"}))
		assert.Equal(t, http.StatusServiceUnavailable, got.Status)
		assert.Equal(t, "There is no room left.", got.Text)
	}
	inside := TroubleOf(&house.Error{Kind: house.ErrInternal, Message: "a detail for the log"})
	assert.Equal(t, http.StatusInternalServerError, inside.Status)
	assert.NotContains(t, inside.Text, "detail")
}

// Who is refused a search is told when to ask again.
func TestOverloadHasItsOwnMessage(t *testing.T) {
	got := TroubleOf(fmt.Errorf("covers: %w", admission.ErrFull))
	assert.Equal(t, http.StatusServiceUnavailable, got.Status)
	assert.Contains(t, got.Text, "in a second")
	assert.Equal(t, 1, admission.RetryAfter, "a second is what the page says")
}
