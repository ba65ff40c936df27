package house

import (
	"slices"
	"time"
)

// Out says that an ingredient has run out. Its id is the id of the ingredient. The record
// is removed when the ingredient is available again; the history keeps both changes.
type Out struct {
	Ingredient string    `json:"ingredient"`
	Since      time.Time `json:"since"`
	Note       string    `json:"note,omitempty"`
}

// Ref returns the kind and id of the record.
func (o Out) Ref() Ref { return Ref{KindOut, o.Ingredient} }

func (o Out) check() error {
	return checks(checkTime("since", o.Since), checkText("note", o.Note, MaxNote))
}
func (o Out) clean() Item           { o.Since, o.Note = utc(o.Since), lines(o.Note); return o }
func (o Out) withID(id string) Item { o.Ingredient = id; return o }
func (o Out) links() []Ref          { return nil }

// Reception is how a guest received a drink.
type Reception string

// The guest kept the drink, sent it back, or the house did not note which.
const (
	ReceptionKept     Reception = "kept"
	ReceptionSentBack Reception = "sent back"
	ReceptionUnknown  Reception = "unknown"
)

// Receptions lists every way to receive one.
func Receptions() []Reception { return []Reception{ReceptionKept, ReceptionSentBack, ReceptionUnknown} }

// ServedCover is a cover that was served, and how it was received. An empty id is filled in on
// writing.
type ServedCover struct {
	ID          string    `json:"id"`
	At          time.Time `json:"at"`
	Spec        string    `json:"spec"`         // id of the spec that was covered
	SpecVersion int64     `json:"spec_version"` // 0: not stated
	Missing     string    `json:"missing"`      // id of the ingredient that had run out
	Served      []Pour    `json:"served"`       // the drink as made
	Reception   Reception `json:"verdict"`
	Score       *float64  `json:"score,omitempty"` // 0 to 10, from the taster
	Taster      string    `json:"taster,omitempty"`
	Note        string    `json:"note,omitempty"`
}

// Ref returns the kind and id of the record.
func (c ServedCover) Ref() Ref { return Ref{KindCover, c.ID} }

func (c ServedCover) check() error {
	return checks(
		checkTime("at", c.At),
		CheckID(c.Missing),
		checkPours("served", c.Served, ""),
		oneOf("verdict", c.Reception, Receptions()),
		checkOptional("score", c.Score, 0, 10),
		checkRange("spec_version", float64(c.SpecVersion), 0, 1<<53),
		checkLine("taster", c.Taster, false),
		checkText("note", c.Note, MaxNote),
	)
}

func (c ServedCover) clean() Item {
	c.At, c.Score, c.Served = utc(c.At), copyOf(c.Score), slices.Clone(c.Served)
	c.Note = lines(c.Note)
	return c
}
func (c ServedCover) withID(id string) Item { c.ID = id; return c }
func (c ServedCover) links() []Ref          { return []Ref{{KindSpec, c.Spec}} }

// Training is one answer of one person in a training round. An empty id is filled in on
// writing.
type Training struct {
	ID       string    `json:"id"`
	At       time.Time `json:"at"`
	Person   string    `json:"person"`
	Drill    string    `json:"drill"` // id of the round or the flight
	Question string    `json:"question"`
	Wanted   string    `json:"wanted"`
	Given    string    `json:"given"`
	Right    bool      `json:"right"`
	Score    *float64  `json:"score,omitempty"` // 0 to 1, if an answer can be partly right

	// Progress is computed from the next four fields. Records of other drills, and
	// records written by earlier versions, have none of them.
	Kind    string   `json:"kind,omitempty"`     // of round, such as "fault"
	Axis    string   `json:"axis,omitempty"`     // of kinds that have one, such as "sour"
	SizeJND *float64 `json:"size_jnd,omitempty"` // difficulty of the round
	Quality *int     `json:"quality,omitempty"`  // of the answer, 0 to 5
}

// Ref returns the kind and id of the record.
func (t Training) Ref() Ref { return Ref{KindTraining, t.ID} }

func (t Training) check() error {
	return checks(
		checkTime("at", t.At),
		checkLine("person", t.Person, true),
		checkLine("drill", t.Drill, true),
		checkText("question", t.Question, MaxNote),
		checkText("wanted", t.Wanted, MaxNote),
		checkText("given", t.Given, MaxNote),
		checkOptional("score", t.Score, 0, 1),
		checkLine("kind", t.Kind, false),
		checkLine("axis", t.Axis, false),
		checkOptional("size_jnd", t.SizeJND, 0, maxSizeJND),
		t.checkQuality(),
	)
}

// maxSizeJND is far above the size of any round; a larger one is a mistake.
const maxSizeJND = 1000

func (t Training) checkQuality() error {
	if t.Quality == nil {
		return nil
	}
	return checkRange("quality", float64(*t.Quality), 0, 5)
}

func (t Training) clean() Item {
	t.At, t.Score, t.SizeJND = utc(t.At), copyOf(t.Score), copyOf(t.SizeJND)
	if t.Quality != nil {
		quality := *t.Quality
		t.Quality = &quality
	}
	t.Question, t.Wanted, t.Given = lines(t.Question), lines(t.Wanted), lines(t.Given)
	return t
}
func (t Training) withID(id string) Item { t.ID = id; return t }
func (t Training) links() []Ref          { return nil }

// Right marks a version of a spec as right for this house. All of them together are its
// palate. Its id is the id of the spec.
type Right struct {
	Spec        string `json:"spec"`
	SpecVersion int64  `json:"spec_version"` // the version that was tasted
	Note        string `json:"note,omitempty"`
}

// Ref returns the kind and id of the record.
func (r Right) Ref() Ref { return Ref{KindRight, r.Spec} }

func (r Right) check() error {
	return checks(checkRange("spec_version", float64(r.SpecVersion), 1, 1<<53), checkText("note", r.Note, MaxNote))
}
func (r Right) clean() Item           { r.Note = lines(r.Note); return r }
func (r Right) withID(id string) Item { r.Spec = id; return r }
func (r Right) links() []Ref          { return []Ref{{KindSpec, r.Spec}} }
