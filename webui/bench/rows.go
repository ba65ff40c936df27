package bench

import (
	"cmp"
	"encoding/json"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// rowsView is the draft as rows to fill in. Text and rows are one draft: a row
// names the line that it stands for, and lines that are no pour stay as they
// are.
type rowsView struct {
	Text     string // the draft that they are of
	Name     string // of the drink
	Rows     []rowView
	Method   string // empty if none is stated
	Service  string
	Units    []unitChoice
	Methods  []flavor.Method
	Services []flavor.Service
	Grids    string // the steps of each unit, as JSON
	NameLine int    // of the draft, from 1; 0 if it has no name

	methodLines []int // the lines that say how it is mixed and served
}

// rowView is one pour as a row. A line that cannot be read stands whole in Name.
type rowView struct {
	Number             int // of the row, from 1
	Line               int // of the draft, from 1; 0 for the empty row at the end
	Amount, Unit, Name string
	Less, More         string // the draft with one step of the jigger less or more; empty if there is none
	Without            string // the draft without the row
}

// After is the line after which a new row goes.
func (v *rowsView) After() int {
	last := v.NameLine
	for _, r := range v.Rows {
		last = max(last, r.Line)
	}
	return last
}

// MethodLine is the first line that says how it is mixed; 0 if none does.
func (v *rowsView) MethodLine() int {
	if len(v.methodLines) == 0 {
		return 0
	}
	return v.methodLines[0]
}

// unitChoice is a unit to choose.
type unitChoice struct {
	Value, Many string
	Alone       bool // "splash of water" is one splash; without an amount the others say nothing
}

// rowsOf reads a draft line by line, so that a slip in one line leaves the
// others as rows. If the draft could be read as a whole, pours is how many pours
// it has, which tells a name such as "Two Hoots" from a pour; else it is below 0.
func rowsOf(text string, pours int) *rowsView {
	v := &rowsView{Text: text, Units: unitChoices, Methods: flavor.Methods(), Services: flavor.Services(), Grids: gridsJSON}
	lines := strings.Split(text, "\n")
	first := true
	for i, line := range lines {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		v.read(line, i+1, first)
		first = false
	}
	if pours >= 0 && len(v.Rows) == pours+1 && v.NameLine == 0 {
		v.Name, v.NameLine = strings.TrimSpace(lines[v.Rows[0].Line-1]), v.Rows[0].Line
		v.Rows = v.Rows[1:]
	}
	for i := range v.Rows {
		v.Rows[i].Number = i + 1
		v.Rows[i].steps(lines)
	}
	v.Rows = append(v.Rows, rowView{Number: len(v.Rows) + 1, Unit: string(v.system())})
	return v
}

// read takes one line as the name, a pour, or what is said of the method.
func (v *rowsView) read(line string, number int, first bool) {
	if first {
		if d, err := measure.Parse(line + "\n1 oz x"); err == nil && d.Name != "" && len(d.Lines) == 1 {
			v.Name, v.NameLine = d.Name, number
			return
		}
	}
	if d, err := measure.Parse("name: x\n" + line); err == nil {
		l := d.Lines[0]
		v.Rows = append(v.Rows, rowView{Line: number, Amount: bareAmount(l.Amount, l.Unit), Unit: string(l.Unit), Name: l.Name})
		return
	}
	if d, err := measure.Parse("name: x\n1 oz x\n" + line); err == nil && len(d.Lines) == 1 {
		v.methodLines = append(v.methodLines, number)
		v.Method, v.Service = cmp.Or(v.Method, string(d.Method)), cmp.Or(v.Service, string(d.Service))
		return
	}
	v.Rows = append(v.Rows, rowView{Line: number, Name: line, Unit: string(v.system())})
}

// system is the unit that an empty row starts in: that of the last row that is
// poured by the jigger.
func (v *rowsView) system() flavor.Unit {
	for _, r := range slices.Backward(v.Rows) {
		switch u := flavor.Unit(r.Unit); u {
		case flavor.Ounce, flavor.Millilitre, flavor.Centilitre:
			return u
		}
	}
	return flavor.Ounce
}

// steps fills in what the buttons of a row make of the draft.
func (r *rowView) steps(lines []string) {
	without := slices.Delete(slices.Clone(lines), r.Line-1, r.Line)
	r.Without = strings.Join(without, "\n")
	d, err := measure.Parse("name: x\n" + lines[r.Line-1])
	if err != nil {
		return
	}
	for _, to := range []struct {
		draft *string
		up    bool
	}{{&r.Less, false}, {&r.More, true}} {
		amount := jiggerStep(d.Lines[0].Amount, d.Lines[0].Unit, to.up)
		if amount <= 0 {
			continue
		}
		stepped := slices.Clone(lines)
		stepped[r.Line-1] = composeRow(bareAmount(amount, d.Lines[0].Unit), r.Unit, r.Name)
		*to.draft = strings.Join(stepped, "\n")
	}
}

// bareAmount writes an amount without its unit; a top has none.
func bareAmount(amount float64, u flavor.Unit) string {
	if u == flavor.Top {
		return ""
	}
	bare, _, _ := strings.Cut(measure.FormatAmount(amount, u), " ")
	return bare
}

// composeRow writes a row as a line.
func composeRow(amount, unit, name string) string {
	if at := slices.IndexFunc(unitChoices, func(u unitChoice) bool { return u.Value == unit }); at >= 0 {
		switch u := unitChoices[at]; {
		case amount == "" && !u.Alone:
			unit = ""
		case amount != "1" && strings.Trim(amount, "⅛¼⅓⅜½⅝⅔¾⅞") != "":
			unit = u.Many
		}
	}
	return strings.Join(strings.Fields(strings.Join([]string{amount, unit, name}, " ")), " ")
}

// unitChoices are the units of a row; what comes whole has none.
var unitChoices = func() []unitChoice {
	out := []unitChoice{{}}
	for _, u := range measure.Units() {
		if u == flavor.Piece {
			continue // a piece is a number and a name
		}
		c := unitChoice{Value: string(u), Many: string(u)}
		_, err := measure.Parse("name: x\n" + c.Value + " x")
		c.Alone = err == nil
		if u != flavor.Top {
			_, c.Many, _ = strings.Cut(measure.FormatAmount(2, u), " ")
		}
		out = append(out, c)
	}
	return out
}()

// grid is the steps of a unit: multiples of every, and a few marks between.
type grid struct {
	every float64
	marks []float64
}

// gridOf returns the steps that a jigger has. Metric ones are marked at the
// fives and at 7.5 and 22.5 mL, which stand for ¼ and ¾ oz: common practice.
func gridOf(u flavor.Unit) grid {
	switch u {
	case flavor.Top:
		return grid{}
	case flavor.Millilitre:
		return grid{5, []float64{2.5, 7.5, 22.5}}
	case flavor.Centilitre:
		return grid{0.5, []float64{0.25, 0.75, 2.25}}
	}
	return grid{every: measure.Step(u)}
}

// gridSlack absorbs rounding when an amount is held against a step.
const gridSlack = 1e-9

// jiggerStep returns the next amount above or below, zero if there is none.
func jiggerStep(amount float64, u flavor.Unit, up bool) float64 {
	g := gridOf(u)
	if g.every == 0 || !(amount > 0) || math.IsInf(amount, 0) {
		return 0
	}
	at := (math.Ceil(amount/g.every-gridSlack) - 1) * g.every
	if up {
		at = (math.Floor(amount/g.every+gridSlack) + 1) * g.every
	}
	for _, m := range g.marks {
		if up && m > amount+gridSlack {
			at = math.Min(at, m)
		}
		if !up && m < amount-gridSlack {
			at = math.Max(at, m)
		}
	}
	return math.Max(0, at)
}

// gridsJSON is every grid for the script: by unit, the step and then the marks.
var gridsJSON = func() string {
	all := map[string][]float64{"": {1}}
	for _, u := range measure.Units() {
		if g := gridOf(u); g.every > 0 {
			all[string(u)] = append([]float64{g.every}, g.marks...)
		}
	}
	text, err := json.Marshal(all)
	if err != nil {
		panic(err) // numbers and words alone
	}
	return string(text)
}()
