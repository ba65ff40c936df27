package trial

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Typed is a draft as a bartender types it, and what it pours.
type Typed struct {
	Hand  string // whose hand it is in, such as "written by hand"
	Text  string
	Pours []Poured // none: nobody can tell, and the right answer is to ask
}

// Poured is one pour of a draft: an ingredient, and its mL unless any amount will
// do, which zero says.
type Poured struct {
	ID        string
	ML        float64
	Tolerance float64 // mL
}

func (p Poured) is(x *flavor.Pour) bool {
	return x.Profile.ID == p.ID && (p.ML == 0 || math.Abs(x.ML-p.ML) <= p.Tolerance)
}

// ReadAs is what became of a draft.
type ReadAs string

// What may become of a draft. A misreading is told if each pour that is not meant
// is marked as inferred or as a slip of the pen, and silent else.
const (
	ReadRight     ReadAs = "right"
	ReadRefused   ReadAs = "refused"
	MisreadTold   ReadAs = "misread, and told"
	MisreadSilent ReadAs = "silently misread"
)

// DraftMiss is a draft that was not read right.
type DraftMiss struct {
	Draft *Typed
	As    ReadAs
	Spec  flavor.Spec
	Err   error // why it was refused
}

// HandReport counts what became of the drafts in one hand.
type HandReport struct {
	Hand   string
	Drafts int
	Became map[ReadAs]int
}

// DraftReport says how often drafts were read right.
type DraftReport struct {
	Hands  []HandReport // in the order that they come in
	Misses []DraftMiss
}

// TryDrafts reads every draft. A reader's error is a refusal.
func TryDrafts(drafts []Typed, read func(text string) (flavor.Spec, error)) *DraftReport {
	r := &DraftReport{}
	for i := range drafts {
		d := &drafts[i]
		spec, err := read(d.Text)
		as := d.became(&spec, err)
		at := slices.IndexFunc(r.Hands, func(h HandReport) bool { return h.Hand == d.Hand })
		if at < 0 {
			at = len(r.Hands)
			r.Hands = append(r.Hands, HandReport{Hand: d.Hand, Became: map[ReadAs]int{}})
		}
		r.Hands[at].Drafts++
		r.Hands[at].Became[as]++
		if as != ReadRight {
			r.Misses = append(r.Misses, DraftMiss{Draft: d, As: as, Spec: spec, Err: err})
		}
	}
	return r
}

// became compares what was read with what is meant, whatever the order.
func (d *Typed) became(s *flavor.Spec, err error) ReadAs {
	switch {
	case err != nil && len(d.Pours) == 0:
		return ReadRight
	case err != nil:
		return ReadRefused
	}
	wanted := slices.Clone(d.Pours)
	var odd []*flavor.Pour
	for i := range s.Pours {
		p := &s.Pours[i]
		if at := slices.IndexFunc(wanted, func(w Poured) bool { return w.is(p) }); at >= 0 {
			wanted = slices.Delete(wanted, at, at+1)
		} else {
			odd = append(odd, p)
		}
	}
	if len(odd) == 0 && len(wanted) == 0 {
		return ReadRight
	}
	told := len(odd) > 0 && !slices.ContainsFunc(odd, func(p *flavor.Pour) bool { return p.Match.How != flavor.MatchFuzzy && len(p.Match.Inferred) == 0 })
	if told {
		return MisreadTold
	}
	return MisreadSilent
}

// Total adds up all hands.
func (r *DraftReport) Total() HandReport {
	sum := HandReport{Hand: "all", Became: map[ReadAs]int{}}
	for _, h := range r.Hands {
		sum.Drafts += h.Drafts
		for as, n := range h.Became {
			sum.Became[as] += n
		}
	}
	return sum
}

// WriteMarkdown writes the counts as a table, and below it each draft that was not
// read right.
func (r *DraftReport) WriteMarkdown(w io.Writer) error {
	t := table{w: w}
	t.row("drafts", "number", "read right", "refused", "misread, and told", "silently misread")
	t.rule(6)
	for _, h := range append(slices.Clone(r.Hands), r.Total()) {
		t.row(h.Hand, count(h.Drafts), percent(float64(h.Became[ReadRight])/float64(max(h.Drafts, 1))),
			count(h.Became[ReadRefused]), count(h.Became[MisreadTold]), count(h.Became[MisreadSilent]))
	}
	t.line("")
	for i := range r.Misses {
		m := &r.Misses[i]
		t.line(fmt.Sprintf("%s: %q", m.As, m.Draft.Text))
		if m.Err != nil {
			t.line("    " + strings.ReplaceAll(m.Err.Error(), "\n", "\n    "))
			continue
		}
		t.line("    read as " + inLine(m.Spec.Pours))
	}
	return t.err
}
