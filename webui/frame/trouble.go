package frame

import (
	"context"
	"errors"
	"net/http"

	"counterpour/api/admission"
	"counterpour/webui/form"
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

// troubles are the answers by kind of error; the last is for all others.
var troubles = []struct {
	kind error
	Trouble
}{
	{form.ErrUnreadable, Trouble{Status: http.StatusBadRequest, Title: "That could not be read",
		Text: "Part of the form is not what this page sends. Go back and send it again; what you typed is still there."}},
	{errElsewhere, Trouble{Status: http.StatusForbidden, Title: "That came from another site",
		Text: "The bar accepts only forms of its own pages. Open the bench and send it from there."}},
	{ErrNotTheirs, Trouble{Status: http.StatusForbidden, Title: "Only a lead may do that",
		Text: "You have signed in for the floor: you mark what ran out and note how covers and training went. Ask a lead to change this."}},
	{ErrNotFound, Trouble{Status: http.StatusNotFound, Title: "There is no such page",
		Text: "Check the address, or start at the bench."}},
	{ErrGone, Trouble{Status: http.StatusConflict, Title: "The house does not have that",
		Text: "Its stock has changed since this page was opened. Open the page again and choose from what is there."}},
	{ErrOvertaken, Trouble{Status: http.StatusConflict, Title: "Marked since by somebody else",
		Text: "It was tapped a while ago, and somebody has marked the same since. Look at the shelf, and mark it again if need be."}},
	{errMethod, Trouble{Status: http.StatusMethodNotAllowed, Title: "That is not how this page works",
		Text: "Open it in a browser, or start at the bench."}},
	{form.ErrTooLong, Trouble{Status: http.StatusRequestEntityTooLarge, Title: "That is more than a page takes",
		Text: "A draft is one drink, one pour a line. Go back and shorten it; what you typed is still there."}},
	{ErrTooMany, Trouble{Status: http.StatusRequestEntityTooLarge, Title: "That is too much at once",
		Text: "One form marks 200 things at most. Send the rest after it."}},
	{ErrCrowded, Trouble{Status: http.StatusServiceUnavailable, Title: "Too many boards are open",
		Text: "The bar keeps only so many screens up to date. Close one that nobody looks at, then open this one again."}},
	{admission.ErrFull, Trouble{Status: http.StatusServiceUnavailable, Title: "The bar is busy",
		Text: "Too many people ask for covers or riffs right now. Send it again in a second; what you typed is still there."}},
	{context.DeadlineExceeded, Trouble{Status: http.StatusServiceUnavailable, Title: "That took too long",
		Text: "It was not your draft. Send it again when the bar is quieter; what you typed is still there."}},
	{ErrInternal, Trouble{Status: http.StatusInternalServerError, Title: "Something broke behind the bar",
		Text: "It was not your draft. Go back and try again; what you typed is still there. The log says what happened."}},
}

// TroubleOf returns what the error page shows for an error. Some errors of the store keep
// their own message.
func TroubleOf(err error) Trouble {
	if text, status := Told(err); status == http.StatusServiceUnavailable {
		return Trouble{Status: status, Title: "The house cannot take that now", Text: text}
	}
	for _, t := range troubles {
		if errors.Is(err, t.kind) {
			return t.Trouble
		}
	}
	return troubles[len(troubles)-1].Trouble
}
