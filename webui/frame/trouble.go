package frame

import (
	"context"
	"errors"
	"net/http"

	"counterpour/api/admission"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Kinds of errors with an answer of their own; any other is internal.
var (
	errElsewhere = errors.New("frame: the form came from another site")
	ErrNotTheirs = errors.New("frame: the change is for a lead to make")
	ErrNotFound  = errors.New("frame: there is no such page")
	errMethod    = errors.New("frame: the method is not for this page")
	ErrGone      = errors.New("frame: the house does not have it")
	// ErrOvertaken is a mark that is sent late, and somebody marked the same since.
	ErrOvertaken = errors.New("frame: somebody marked the same since")
	ErrTooMany   = errors.New("frame: a form does more than one form may")
	ErrCrowded   = errors.New("frame: too many lines are open")
	ErrInternal  = errors.New("frame: internal")
)

// Trouble is what the error page shows.
type Trouble struct {
	Status int
	Title  string
	Text   string

	RequestID string // request id in the log; may be empty
}

// troubleOf is the answer to a kind of error.
type troubleOf struct {
	kind error
	Trouble
}

// troubles are the answers by kind of error; the last is for all others.
func troubles() []troubleOf {
	return []troubleOf{
		{form.ErrUnreadable, Trouble{Status: http.StatusBadRequest, Title: say.It("frame.unreadable"),
			Text: say.It("frame.unreadable-text")}},
		{errElsewhere, Trouble{Status: http.StatusForbidden, Title: say.It("frame.elsewhere"),
			Text: say.It("frame.elsewhere-text")}},
		{ErrNotTheirs, Trouble{Status: http.StatusForbidden, Title: say.It("frame.not-theirs"),
			Text: say.It("frame.not-theirs-text")}},
		{ErrNotFound, Trouble{Status: http.StatusNotFound, Title: say.It("frame.not-found"),
			Text: say.It("frame.not-found-text")}},
		{ErrGone, Trouble{Status: http.StatusConflict, Title: say.It("frame.gone"),
			Text: say.It("frame.gone-text")}},
		{ErrOvertaken, Trouble{Status: http.StatusConflict, Title: say.It("frame.overtaken"),
			Text: say.It("frame.overtaken-text")}},
		{errMethod, Trouble{Status: http.StatusMethodNotAllowed, Title: say.It("frame.method"),
			Text: say.It("frame.method-text")}},
		{form.ErrTooLong, Trouble{Status: http.StatusRequestEntityTooLarge, Title: say.It("frame.too-long"),
			Text: say.It("frame.too-long-text")}},
		{ErrTooMany, Trouble{Status: http.StatusRequestEntityTooLarge, Title: say.It("frame.too-many"),
			Text: say.It("frame.too-many-text")}},
		{ErrCrowded, Trouble{Status: http.StatusServiceUnavailable, Title: say.It("frame.crowded"),
			Text: say.It("frame.crowded-text")}},
		{admission.ErrFull, Trouble{Status: http.StatusServiceUnavailable, Title: say.It("frame.busy"),
			Text: say.It("frame.busy-text")}},
		{context.DeadlineExceeded, Trouble{Status: http.StatusServiceUnavailable, Title: say.It("frame.too-slow"),
			Text: say.It("frame.too-slow-text")}},
		{ErrInternal, Trouble{Status: http.StatusInternalServerError, Title: say.It("frame.broke"),
			Text: say.It("frame.broke-text")}},
	}
}

// TroubleOf returns what the error page shows for an error. Some errors of the store keep
// their own message.
func TroubleOf(err error) Trouble {
	if text, status := Told(err); status == http.StatusServiceUnavailable {
		return Trouble{Status: status, Title: say.It("frame.store-cannot"), Text: text}
	}
	all := troubles()
	for _, t := range all {
		if errors.Is(err, t.kind) {
			if said := form.Said(err); said != "" {
				t.Text = words.Sentence(said)
			}
			return t.Trouble
		}
	}
	return all[len(all)-1].Trouble
}
