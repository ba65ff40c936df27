package webui

import (
	"errors"
	"net/http"
)

// The kinds of errors that a page may fail with; any other is internal.
var (
	errBadForm   = errors.New("webui: the form cannot be read")
	errElsewhere = errors.New("webui: the form came from another site")
	errNotTheirs = errors.New("webui: the change is for a lead to make")
	errNotFound  = errors.New("webui: there is no such page")
	errMethod    = errors.New("webui: the method is not for this page")
	errGone      = errors.New("webui: the house does not have it")
	errTooLong   = errors.New("webui: the form is too long")
	errInternal  = errors.New("webui: internal")
)

// trouble is an error as a page tells it.
type trouble struct {
	Status int
	Title  string
	Text   string
}

// troubles says what each kind looks like; the last is for everything else.
var troubles = []struct {
	kind error
	trouble
}{
	{errBadForm, trouble{http.StatusBadRequest, "That could not be read",
		"Part of the form is not what this page sends. Go back and send it again; what you typed is still there."}},
	{errElsewhere, trouble{http.StatusForbidden, "That came from another site",
		"Only forms of these pages are taken. Open the bench and send it from there."}},
	{errNotTheirs, trouble{http.StatusForbidden, "That is for a lead",
		"You have signed in for the floor: you mark what ran out and note how covers and training went. Ask a lead to change this."}},
	{errNotFound, trouble{http.StatusNotFound, "There is no such page",
		"Check the address, or start at the bench."}},
	{errGone, trouble{http.StatusConflict, "The house does not have that",
		"Its stock has changed since this page was opened. Open the page again and choose from what is there."}},
	{errMethod, trouble{http.StatusMethodNotAllowed, "That is not how this page works",
		"Open it in a browser, or start at the bench."}},
	{errTooLong, trouble{http.StatusRequestEntityTooLarge, "That is more than a page takes",
		"A draft is one drink, one pour a line. Go back and shorten it; what you typed is still there."}},
	{errInternal, trouble{http.StatusInternalServerError, "Something broke behind the bar",
		"It was not your draft. Go back and try again; what you typed is still there. The log says what happened."}},
}

// troubleOf returns how an error is told.
func troubleOf(err error) trouble {
	for _, t := range troubles {
		if errors.Is(err, t.kind) {
			return t.trouble
		}
	}
	return troubles[len(troubles)-1].trouble
}
