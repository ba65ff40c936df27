package webuitest

import "net/url"

// Drafts that the fake bar can read: in balance, too sweet, and with nuts in it.
const (
	GoodDraft  = "Halyard Sour\n2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"
	SweetDraft = "Halyard Sour\n2 oz gin\n# pressed this morning\n1/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"
	NutDraft   = "2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\n1 egg white\ndry shake, up"
)

// FootLine is of the foot that every page carries.
const FootLine = "the label decides, then local law"

// AnswerForm is an answer to a round, without the round.
func AnswerForm(kind string, pairs ...string) url.Values {
	v := url.Values{"what": {kind}, "steps": {"6"}}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return v
}
