package training

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"net/http"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// personOf tells the person of a request: who signed in, or else who they say
// they are. Nothing else asks who trains.
func personOf(r *http.Request) coaching.Trainee {
	if in, ok := access.PersonOf(r.Context()); ok {
		return coaching.Trainee{Name: in.Name}
	}
	if c, err := r.Cookie(nameCookie); err == nil {
		raw, err := asText.DecodeString(c.Value)
		if name, fault := readName(string(raw)); err == nil && fault == nil && name != "" {
			return coaching.Trainee{Name: name}
		}
	}
	c, err := r.Cookie(learnerCookie)
	if err != nil {
		return coaching.Trainee{}
	}
	if raw, err := hex.DecodeString(c.Value); err != nil || len(raw) != learnerBytes {
		return coaching.Trainee{}
	}
	return coaching.Trainee{Word: c.Value}
}

// The cookie of a name stays for a season; that of a learner without one holds a
// random word and goes when the browser is closed.
const (
	nameCookie    = "trainee"
	nameSeconds   = 90 * 24 * 60 * 60
	learnerCookie = "learner"
	learnerBytes  = 16
	trainingPath  = "/training"
)

// maxName is the most letters of a name.
const maxName = 60

// readName reads a name as it was typed; empty for nothing but spaces.
func readName(text string) (string, error) {
	if !utf8.ValidString(text) || strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) && !unicode.IsSpace(r) }) {
		return "", form.Missing("name", say.It("training.name-cannot-be-read"))
	}
	name := strings.Join(strings.Fields(text), " ")
	if n := utf8.RuneCountInString(name); n > maxName {
		return "", form.Missing("name", say.It("training.name-is-too-long", "Most", maxName, "Letters", n))
	}
	return name, nil
}

func setCookie(w http.ResponseWriter, r *http.Request, name, value string, seconds int) {
	http.SetCookie(w, &http.Cookie{Name: name, Value: value, Path: trainingPath, MaxAge: seconds, HttpOnly: true,
		Secure: access.Secure(r), SameSite: http.SameSiteLaxMode})
}

// newLearner gives somebody without a name a word to be known by.
func newLearner(w http.ResponseWriter, r *http.Request) coaching.Trainee {
	raw := make([]byte, learnerBytes)
	rand.Read(raw) // never fails
	word := hex.EncodeToString(raw)
	setCookie(w, r, learnerCookie, word, 0)
	return coaching.Trainee{Word: word}
}

// whoView is the form that asks who somebody is.
type whoView struct {
	In      bool   // they have signed in, so that the name is not theirs to choose
	Name    string // as it counts now; empty for none
	Typed   string
	Trouble string
	Back    string // the page to go back to
	Open    bool   // the form stands open
}

// whoOf says who trains, with a form to change it that leads back.
func whoOf(r *http.Request, back string) whoView {
	_, in := access.PersonOf(r.Context())
	name := personOf(r).Name
	return whoView{In: in, Name: name, Back: back, Open: name == ""}
}

// named takes a name, or forgets it if the field is empty.
func (p *pages) named(w http.ResponseWriter, r *http.Request) error {
	back := r.Form.Get("back")
	if back != trainingPath && back != progressPath {
		return fmt.Errorf("%w: no page of training is %q", form.ErrUnreadable, back)
	}
	typed := r.Form.Get("name")
	name, err := readName(typed)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v, err := p.progressView(r)
		if err != nil {
			return err
		}
		v.Who = whoView{Name: v.Who.Name, Typed: typed, Trouble: words.Sentence(faults[0].Message), Back: back, Open: true}
		return p.Write(w, r, http.StatusUnprocessableEntity, "progress", "layout", v)
	}
	if name == "" {
		setCookie(w, r, nameCookie, "", -1)
	} else {
		setCookie(w, r, nameCookie, asText.EncodeToString([]byte(name)), nameSeconds)
	}
	http.Redirect(w, r, back, http.StatusSeeOther)
	return nil
}
