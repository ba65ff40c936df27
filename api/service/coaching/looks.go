package coaching

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/measure"
)

// LooksBytes is the length of [Looks].
const LooksBytes = 8

// Looks returns a digest of what a round shows. It tells apart rounds that another version
// of the program, the menu or the stock makes from the same request: an answer must be graded
// against what was shown.
func Looks(r *drill.Round) []byte {
	h := sha256.New()
	fmt.Fprintf(h, "%q", r.Question)
	for i := range r.Specs {
		s := &r.Specs[i]
		fmt.Fprintf(h, "%q %s %s", s.Name, s.Method, s.Service)
		for j := range s.Pours {
			fmt.Fprintf(h, "%q %q", shownAmount(&s.Pours[j]), s.Pours[j].Profile.ID)
		}
	}
	for _, o := range r.Options {
		fmt.Fprintf(h, "%q", o.Label)
	}
	return h.Sum(nil)[:LooksBytes]
}

// shownAmount is an amount as the digest has it, whatever a face makes of it: a round that was
// handed out before a new version of the program is graded after it.
func shownAmount(p *flavor.Pour) string {
	if p.Unit == flavor.Piece {
		return measure.FormatAmount(p.Amount, "")
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}

// ErrChanged means that a round is made otherwise now than when it was shown, since the
// program, its drinks or the stock have changed.
var ErrChanged = errors.New("the round is made otherwise now")

// Again makes a round again from its request. The error is [ErrChanged] if it no longer looks
// as it did when it was shown.
func Again(t *drill.Trainer, r drill.RoundRequest, looked []byte) (*drill.Round, error) {
	round, err := t.Round(r)
	if len(flavor.DataFaultsOf(err)) > 0 || err == nil && !bytes.Equal(looked, Looks(round)) {
		return nil, ErrChanged
	}
	return round, err
}
