package trial

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Situation is a drink that something is out for, and what the trade pours and
// does not pour in its place.
type Situation struct {
	Spec flavor.Spec
	Out  *flavor.Profile
	Also []*flavor.Profile // what else is out
	// Avoid is the allergens, and Diet the words, see [flavor.ParseDiet], that the guest
	// keeps to.
	Avoid []flavor.Allergen
	Diet  []string
	// Good is the answers that are accepted: what is poured together, each by the
	// ids that it may have.
	Good [][][]string
	Bad  []string // ids of what would lose the guest in any cover
}

// Coverer returns covers for a situation, the best first, each as its pours.
type Coverer func(*Situation) ([][]flavor.Pour, error)

// CoverMiss is a situation that did not come out right.
type CoverMiss struct {
	Situation *Situation
	Covers    [][]flavor.Pour // the first five
	Place     int             // of the first accepted cover, from 1; 0 for none
	Bad       []string        // ids that would lose the guest, among the first five
}

// CoverReport says how often covers were what the trade pours.
type CoverReport struct {
	Situations      int
	First, Three    int // accepted at the first place, among the first three
	BadFive, Silent int // with something unacceptable among the first five; without any cover
	Misses          []CoverMiss
}

// How many of the first covers are looked at for what is accepted, and for what
// is not.
const (
	acceptedIn = 3
	badIn      = 5
)

// TryCovers asks for covers in every situation.
func TryCovers(situations []Situation, ask Coverer) (*CoverReport, error) {
	r := &CoverReport{Situations: len(situations)}
	for i := range situations {
		s := &situations[i]
		covers, err := ask(s)
		if err != nil {
			return nil, fmt.Errorf("trial: %s in %q: %w", s.Out.Name, s.Spec.Name, err)
		}
		if len(covers) == 0 {
			r.Silent++
		}
		m := CoverMiss{Situation: s, Covers: covers[:min(len(covers), badIn)], Place: s.place(covers)}
		m.Bad = s.badAmong(m.Covers)
		if m.Place == 1 {
			r.First++
		}
		if m.Place >= 1 && m.Place <= acceptedIn {
			r.Three++
		}
		if len(m.Bad) > 0 {
			r.BadFive++
		}
		if m.Place != 1 || len(m.Bad) > 0 {
			r.Misses = append(r.Misses, m)
		}
	}
	return r, nil
}

// place returns the place, from 1, of the first cover that is accepted, 0 for
// none.
func (s *Situation) place(covers [][]flavor.Pour) int {
	return 1 + slices.IndexFunc(covers, s.accepts)
}

func (s *Situation) accepts(pours []flavor.Pour) bool {
	return slices.ContainsFunc(s.Good, func(answer [][]string) bool { return answers(pours, answer) })
}

// helping is the share of a cover's volume up to which a pour is a helping hand
// beside what the answer names.
const helping = 0.25

// answers reports whether a cover pours what an answer names, and little else.
func answers(pours []flavor.Pour, answer [][]string) bool {
	var total, named float64
	for _, p := range pours {
		total += p.ML
	}
	for _, ids := range answer {
		at := slices.IndexFunc(pours, func(p flavor.Pour) bool { return slices.Contains(ids, p.Profile.ID) })
		if at < 0 {
			return false
		}
		named += pours[at].ML
	}
	return total-named <= helping*total
}

// Possible reports whether some answer can be poured from a stock.
func (s *Situation) Possible(stock []*flavor.Profile) bool {
	has := func(id string) bool {
		return slices.ContainsFunc(stock, func(p *flavor.Profile) bool { return p.ID == id })
	}
	return slices.ContainsFunc(s.Good, func(answer [][]string) bool {
		return !slices.ContainsFunc(answer, func(ids []string) bool { return !slices.ContainsFunc(ids, has) })
	})
}

func (s *Situation) badAmong(covers [][]flavor.Pour) (bad []string) {
	for _, pours := range covers {
		if s.accepts(pours) {
			continue
		}
		for _, p := range pours {
			if id := p.Profile.ID; slices.Contains(s.Bad, id) && !slices.Contains(bad, id) {
				bad = append(bad, id)
			}
		}
	}
	return bad
}

// WriteMarkdown writes the report as a table, and under it, if that is asked,
// what did not come out right.
func (r *CoverReport) WriteMarkdown(w io.Writer, title string, misses bool) error {
	t := table{w: w}
	t.row("covers", "situations", "accepted first", "in the first three", "unacceptable in the first five", "none found")
	t.rule(6)
	n := float64(max(r.Situations, 1))
	t.row(title, count(r.Situations), percent(float64(r.First)/n), percent(float64(r.Three)/n), count(r.BadFive), count(r.Silent))
	if !misses {
		return t.err
	}
	t.line("")
	for i := range r.Misses {
		m := &r.Misses[i]
		t.line(fmt.Sprintf("%s out of %s: %s", m.Situation.Out.Name, inLine(m.Situation.Spec.Pours), m.verdict()))
		for k, pours := range m.Covers {
			t.line(fmt.Sprintf("    %d. %s", k+1, inLine(pours)))
		}
	}
	return t.err
}

func (m *CoverMiss) verdict() string {
	text := "not accepted"
	if m.Place > 0 {
		text = fmt.Sprintf("accepted at place %d", m.Place)
	}
	if len(m.Bad) > 0 {
		text += "; unacceptable: " + strings.Join(m.Bad, ", ")
	}
	return text
}

func inLine(pours []flavor.Pour) string {
	words := make([]string, len(pours))
	for i, p := range pours {
		words[i] = fmt.Sprintf("%.3g %s %s", p.Amount, p.Unit, p.Profile.Name)
	}
	return strings.Join(words, " + ")
}
