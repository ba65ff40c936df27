package bench

import (
	"net/url"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// compareForm asks to hold a draft, so that what becomes of it stands beside it.
type compareForm struct {
	Before string // the draft that is held; empty for none
	Do     string // "hold" or "stop"; empty leaves it as it is
}

func readCompareForm(sent url.Values) compareForm {
	return compareForm{Before: form.Lines(sent.Get("before")), Do: sent.Get("compare")}
}

// compareView is two drafts side by side.
type compareView struct {
	Pours   []compareRow
	Figures []compareRow
}

// compareRow is one thing of both; empty where one has none.
type compareRow struct {
	Name, Before, After string
	Moved               bool
}

// held is the draft to hold from now on. What rewrites a draft holds it as it
// was, unless one is held already or it makes another drink of it.
func (p *pages) held(f *benchForm) string {
	switch {
	case f.Compare.Do == "stop":
		return ""
	case f.Compare.Do == "hold":
		return f.Text
	case f.Becomes && f.Compare.Before == "" && strings.TrimSpace(f.Text) != "":
		was, err := p.bar.Read(f.Text)
		is, err2 := p.bar.Read(f.Become)
		if err == nil && err2 == nil && flavor.NormaliseName(was.Name) == flavor.NormaliseName(is.Name) {
			return f.Text
		}
	}
	return f.Compare.Before
}

// compare sets a held draft beside the one at hand; nil if they read the same
// or the held one cannot be scored.
func (p *pages) compare(before string, is *flavor.Spec) (*compareView, error) {
	if strings.TrimSpace(before) == "" {
		return nil, nil
	}
	was, err := p.bar.Read(before)
	var r, r0 *balance.Result
	if err == nil {
		r0, err = p.bar.Judge(&was)
	}
	if len(flavor.DataFaultsOf(err)) > 0 {
		return nil, nil
	}
	if err == nil {
		r, err = p.bar.Judge(is)
	}
	if err != nil {
		return nil, err
	}
	v := &compareView{Pours: comparePours(&was, is), Figures: compareFigures(r0, r)}
	for _, row := range v.Pours {
		if row.Moved {
			return v, nil
		}
	}
	return nil, nil
}

// comparePours lists the pours of both, those of the second in their order.
func comparePours(was, is *flavor.Spec) []compareRow {
	var out []compareRow
	add := func(name, before, after string) {
		out = append(out, compareRow{name, before, after, before != after})
	}
	for _, p := range part.Compare(was.Pours, is.Pours) {
		add(p.Name(), p.Before(), p.After())
	}
	if was.Method != is.Method {
		add(say.It("bench.method"), string(was.Method), string(is.Method))
	}
	if was.Service != is.Service {
		add(say.It("bench.service"), string(was.Service), string(is.Service))
	}
	return out
}

func scoreAndVerdict(r *balance.Result) string {
	return say.It("bench.score-and-verdict", "Score", words.Points(r.Judgement.Score), "Verdict", strings.ToLower(words.Verdict(r.Verdict)))
}

func compareFigures(was, is *balance.Result) []compareRow {
	out := []compareRow{{Name: say.It("bench.score-of-100"), Before: scoreAndVerdict(was), After: scoreAndVerdict(is)}}
	after := numbersOf(is)
	for i, n := range numbersOf(was) {
		name := strings.ToLower(n.Term)
		if n.Unit != "" {
			name = say.It("bench.with-unit", "Term", name, "Unit", n.Unit)
		}
		out = append(out, compareRow{Name: name, Before: n.Value, After: after[i].Value})
	}
	for i := range out {
		out[i].Moved = out[i].Before != out[i].After
	}
	return out
}
