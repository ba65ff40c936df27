package training

import (
	"fmt"
	htmltemplate "html/template"
	"math"
	"net/http"
	"slices"
	"time"

	"counterpour/flavor/drill"
	"counterpour/webui/access"
	"counterpour/webui/draw"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

const progressPath = "/training/progress"

// progressView is a learner's own progress, and who of the house needs which
// drill next.
type progressView struct {
	Who     whoView
	Played  string
	Skills  []skillRow
	Untried []string
	Lead    bool // the team is shown to leads only
	Team    []teamRow
}

// skillRow is one drill and how it goes.
type skillRow struct {
	Name, Tells, Rounds, Right, Next, Due string

	Curve htmltemplate.HTML // how the rounds went; empty before the second
}

// teamRow is one person of the house and what they need.
type teamRow struct {
	Name   string
	Rounds int
	Last   string
	Next   string // the drill that is needed most; empty if none is
	Why    string
	Then   string // the ones after it
}

func (p *pages) progress(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	if r.Method == http.MethodPost {
		return p.named(w, r)
	}
	v, err := p.progressView(r)
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "progress", "layout", v)
}

func (p *pages) progressView(r *http.Request) (*progressView, error) {
	who := personOf(r)
	learner, err := p.learners.Of(r.Context(), who)
	if err != nil {
		return nil, err
	}
	lead := access.May(r.Context(), access.Lead)
	var team []drill.Learner
	if lead {
		if team, err = p.learners.Team(r.Context()); err != nil {
			return nil, err
		}
	}
	now := time.Now()
	v := &progressView{Who: whoOf(r, progressPath), Lead: lead, Played: playedBy(&learner), Team: teamRows(team, now)}
	for i := range learner.Skills {
		row := skillRowOf(&learner.Skills[i], now)
		row.Curve = curveOf(fmt.Sprintf("curve-%d", i+1), &learner.Skills[i])
		v.Skills = append(v.Skills, row)
	}
	for _, s := range drill.Skills() {
		if !slices.ContainsFunc(learner.Skills, func(o drill.Skill) bool { return o.Kind == s.Kind && o.Axis == s.Axis }) {
			v.Untried = append(v.Untried, skillName(s.Kind, s.Axis))
		}
	}
	return v, nil
}

func skillRowOf(s *drill.Skill, now time.Time) skillRow {
	row := skillRow{Name: skillName(s.Kind, s.Axis), Tells: say.It("training.not-known-yet"), Rounds: fmt.Sprint(s.Rounds),
		Right: percentOf(s.Right, s.Rounds), Next: say.It("training.steps", "Steps", stepsOf(s.Kind, s.Stairs.Next())), Due: dueText(s.Repeat.Due, now)}
	if size, spread, ok := s.Stairs.Threshold(); ok {
		row.Tells = say.It("training.threshold", "Steps", stepsOf(s.Kind, size), "Spread", stepsOf(s.Kind, size*spread))
	}
	return row
}

// leastPlayed is how many rounds a curve needs.
const leastPlayed = 2

// curveOf draws how the rounds of a skill went.
func curveOf(id string, s *drill.Skill) htmltemplate.HTML {
	if len(s.Played) < leastPlayed {
		return ""
	}
	c := draw.Curve{Title: say.It("training.how-it-went", "Skill", skillName(s.Kind, s.Axis))}
	for _, t := range s.Played {
		c.Rounds = append(c.Rounds, draw.Played{Steps: drill.Steps(s.Kind, t.Size), Right: t.Right})
	}
	if size, _, ok := s.Stairs.Threshold(); ok {
		c.Tells = drill.Steps(s.Kind, size)
	}
	return draw.CurveSVG(id, &c)
}

// percentOf is a share in whole per cent.
func percentOf(part, whole int) string {
	if whole == 0 {
		return "–"
	}
	return words.Figure(100*float64(part)/float64(whole), 0) + "\u00a0%"
}

const day = 24 * time.Hour

// dueText says when a drill is due again.
func dueText(due, now time.Time) string {
	days := int(math.Ceil(due.Sub(now).Hours() / day.Hours()))
	switch late := -days; {
	case days > 1:
		return say.It("training.due-in-days", "Days", days)
	case days == 1:
		return say.It("training.due-within-a-day")
	case late < 1:
		return say.It("training.due-now")
	default:
		return say.It("training.due-late", "Days", late)
	}
}

// laterNeeds is how many needs are named after the first.
const laterNeeds = 2

// teamRows says what everybody needs, who needs it most first.
func teamRows(team []drill.Learner, now time.Time) []teamRow {
	needs := drill.Needs(team, now)
	var order []string
	by := map[string][]drill.Need{}
	for _, n := range needs {
		if by[n.Learner] == nil {
			order = append(order, n.Learner)
		}
		by[n.Learner] = append(by[n.Learner], n)
	}
	for i := range team {
		if by[team[i].Name] == nil {
			order = append(order, team[i].Name)
		}
	}
	var out []teamRow
	for _, name := range order {
		at := slices.IndexFunc(team, func(l drill.Learner) bool { return l.Name == name })
		out = append(out, teamRowOf(&team[at], by[name]))
	}
	return out
}

func teamRowOf(l *drill.Learner, needs []drill.Need) teamRow {
	row := teamRow{Name: l.Name}
	var last time.Time
	for i := range l.Skills {
		row.Rounds += l.Skills[i].Rounds
		if l.Skills[i].Last.After(last) {
			last = l.Skills[i].Last
		}
	}
	if !last.IsZero() {
		row.Last = words.Day(last)
	}
	if len(needs) == 0 {
		return row
	}
	row.Next, row.Why = skillName(needs[0].Kind, needs[0].Axis), whyText(&needs[0])
	var then []string
	for _, n := range needs[1:min(len(needs), 1+laterNeeds)] {
		then = append(then, skillName(n.Kind, n.Axis))
	}
	if more := len(needs) - 1 - len(then); more > 0 {
		then = append(then, say.It("training.more-needs", "More", more))
	}
	row.Then = words.List(then)
	return row
}

// whyText says why somebody needs a drill.
func whyText(n *drill.Need) string {
	if n.Rounds == 0 {
		return say.It("training.not-tried-yet")
	}
	notices := ""
	if n.Threshold > 0 {
		notices = stepsOf(n.Kind, n.Threshold)
	}
	return say.It("training.needed-since", "Steps", notices, "Share", words.Figure(100*n.Share, 0), "Rounds", n.Rounds, "Late", max(0, n.Overdue))
}
