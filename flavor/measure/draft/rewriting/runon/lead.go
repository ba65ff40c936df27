package runon

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// listSigns are signs that part one pour from the next.
const listSigns = "+&,/;|•>-"

// mostLead is the most words before the first amount that may be a name.
const mostLead = 8

// lead takes what stands before the first amount: the name of the drink, or words that
// say nothing.
func (r *running) lead(toks []token.Token) bool {
	sign := ""
	if n := len(toks); n > 1 && toks[n-1].Kind == token.Mark {
		sign = toks[n-1].Text
	}
	toks = entry.TrimMarks(toks)
	if len(toks) == 0 {
		return true
	}
	written := strings.Trim(token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End]), " .,:;-")
	words := 0
	for i := range toks {
		if restraints[toks[i].Text] && toks[i].Text != "more" && toks[i].Text != "or" {
			return false
		}
		if toks[i].Kind == token.Word {
			words++
		}
	}
	if s := serving.Read(toks); s.States() && len(s.Unknown) == 0 {
		r.making = append(r.making, written)
		return true
	}
	if s := serving.Read(toks); len(s.Unknown) == 0 && s.Begins { // "muddle 6 blackberries"
		return true
	}
	if last := &toks[len(toks)-1]; len(toks) > 1 && last.Text == "with" { // "hot punch w/ 30 rum"
		return r.lead(toks[:len(toks)-1])
	}
	if (words > mostLead || asides[toks[0].Text]) && entry.TellsToPour(toks[:len(toks)-1]) { // "we also add umeboshi"
		return false
	}
	if words > mostLead || asides[toks[0].Text] {
		r.passed = append(r.passed, written)
		r.name = ""
		return len(r.resolver.Mentioned(written)) == 0
	}
	if f := r.resolver.Find(written, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() { // "white rum 1 jam rum 1 lime 3/4": the amounts stand behind the names
		return false
	}
	if l, _ := parting.Header(r.text, toks); l == label.Glass || l == label.Rim || l == label.Garnish { // "Glass: zorbel-rinsed coupe" is no name
		return false
	}
	r.name = written
	return !r.listSign(sign, toks[len(toks)-1].End)
}

// listSign reports whether a sign that can part a list stands behind a byte more than
// once: what stands before it is an entry of the list as the others are, and no name.
func (r *running) listSign(sign string, from int) bool {
	if sign == "" || !strings.Contains(listSigns, sign) {
		return false
	}
	n := 0
	for i := range r.toks {
		if r.toks[i].Start >= from && r.toks[i].Is(sign) {
			n++
		}
	}
	return n > 1
}

// namePoured reports whether every ingredient that the name names is poured too: what is
// not may be a pour that lacks its amount.
func (r *running) namePoured() bool {
	if r.name == "" {
		return true
	}
	if f := r.resolver.Find(r.name, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Profile != nil && !strings.Contains(r.text, r.name+"\n") { // "wh rum 1 jam rum 1": each amount stands behind its name
		return false
	}
	poured := strings.Join(r.pours, "\n")
	all := r.resolver.Mentioned(poured)
	for _, p := range r.resolver.Mentioned(r.name) {
		found := false
		for _, q := range all {
			found = found || q == p || q.Class == p.Class
		}
		if !found {
			return false
		}
	}
	return true
}
