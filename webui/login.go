package webui

import (
	"errors"
	"math"
	"net/http"
	"strconv"
	"strings"
	"time"

	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
)

// Doorkeeper signs people in. Pages that have none have no login either, and are
// for whoever reaches them.
type Doorkeeper interface {
	// SignIn checks a name and a passcode and sets the cookie of a session. It
	// fails with [access.ErrWrong] or an [*access.WaitError]; nothing is set
	// then, and the answer is the caller's in any case.
	SignIn(w http.ResponseWriter, r *http.Request, name, passcode string) error
}

var _ Doorkeeper = (*access.Guard)(nil)

// loginPage serves the login.
type loginPage struct {
	*frame.Frame
	door Doorkeeper // nil if there is no login
}

// loginView is the form, or who has signed in.
type loginView struct {
	Name      string // as it was typed
	Next      string // where to go on to, on this server
	Fault     string
	By        string // who has signed in; empty for the form
	Can       string // what they may do
	Elsewhere bool   // a link on another site led here
}

// serve shows the form and signs in. It keeps the name that was typed, and
// never the passcode.
func (p *loginPage) serve(w http.ResponseWriter, r *http.Request) error {
	if p.door == nil {
		return frame.ErrNotFound
	}
	if err := form.Parse(r); err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "no-store")
	v := &loginView{Next: access.Local(r.Form.Get("next")), Elsewhere: r.Header.Get("Sec-Fetch-Site") == "cross-site"}
	if r.Method == http.MethodPost {
		return p.signIn(w, r, v)
	}
	if by, ok := access.PersonOf(r.Context()); ok {
		v.By, v.Can = by.Name, whatMay(by.Role)
	}
	return p.Write(w, r, http.StatusOK, "login", "layout", v)
}

func whatMay(role access.Role) string {
	if role.May(access.Lead) {
		return say.It("login.lead-may")
	}
	return say.It("login.floor-may")
}

// signIn goes on to the page that was asked for, or shows the form again.
func (p *loginPage) signIn(w http.ResponseWriter, r *http.Request, v *loginView) error {
	// Only from the body: an address is kept in too many places for a passcode.
	passcode := r.PostForm.Get("passcode")
	v.Name = strings.TrimSpace(r.PostForm.Get("name"))
	if v.Name == "" || strings.TrimSpace(passcode) == "" {
		v.Fault = say.It("login.write-both")
		return p.Write(w, r, http.StatusUnprocessableEntity, "login", "layout", v)
	}
	err := p.door.SignIn(w, r, v.Name, passcode)
	var wait *access.WaitError
	switch {
	case err == nil:
		http.Redirect(w, r, v.Next, http.StatusSeeOther)
		return nil
	case errors.Is(err, access.ErrWrong):
		v.Fault = say.It("login.not-right")
		return p.Write(w, r, http.StatusUnprocessableEntity, "login", "layout", v)
	case errors.As(err, &wait):
		seconds := int(math.Ceil(wait.After.Seconds()))
		w.Header().Set("Retry-After", strconv.Itoa(seconds))
		v.Fault = say.It("login.wait", "Time", waitWords(wait.After))
		return p.Write(w, r, http.StatusTooManyRequests, "login", "layout", v)
	}
	return err
}

// waitWords is a wait in seconds, or in minutes if it is long; never too short.
func waitWords(d time.Duration) string {
	if d > 90*time.Second {
		return say.It("login.minutes", "Minutes", int(math.Ceil(d.Minutes())))
	}
	return say.It("login.seconds", "Seconds", int(math.Ceil(d.Seconds())))
}
