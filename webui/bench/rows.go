package bench

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
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
	Words    string // of the units, for the script
	NameLine int    // of the draft, from 1; 0 if it has no name
	Shown    bool   // the draft is seen as rows, so each offers every unit

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

// rowsOf makes rows of a draft. A line that holds one pour is a row; one that
// holds several, or cannot be read, stands whole in its row. If the draft could
// be read as a whole, pours is how many pours it has, which tells a name such as
// "Two Hoots" from a pour; else it is below 0.
func rowsOf(text string, pours int) *rowsView {
	d := draft.Parse(text)
	v := &rowsView{Text: text, Units: unitChoices, Methods: flavor.Methods(), Services: flavor.Services(), Words: unitWords,
		Name: d.Name, Method: string(d.Method), Service: string(d.Service)}
	v.read(&d)
	if pours >= 0 && len(d.Lines) == pours+1 && v.NameLine == 0 && len(v.Rows) > 0 {
		v.Name, v.NameLine = strings.TrimSpace(d.Lines[0].Asked), v.Rows[0].Line
		v.Rows = v.Rows[1:]
	}
	for i := range v.Rows {
		v.Rows[i].Number = i + 1
	}
	v.Rows = append(v.Rows, rowView{Number: len(v.Rows) + 1, Unit: string(v.system())})
	return v
}

// read takes every line of a draft as the name, a row, or what is said of the
// method.
func (v *rowsView) read(d *draft.Draft) {
	lines := strings.Split(v.Text, "\n")
	on := map[int][]draft.Entry{}
	for _, e := range d.Entries {
		on[e.Line] = append(on[e.Line], e)
	}
	for i, line := range lines {
		entries := on[i+1]
		has := func(k draft.Kind) bool {
			return slices.ContainsFunc(entries, func(e draft.Entry) bool { return e.Kind == k })
		}
		switch at := lineAt(d, i+1); {
		case len(entries) == 1 && has(draft.KindName):
			v.NameLine = i + 1
		case len(entries) == 1 && has(draft.KindPour) && at >= 0:
			l := d.Lines[at]
			v.Rows = append(v.Rows, rowView{Line: i + 1, Amount: bareAmount(l.Amount, l.Unit), Unit: string(l.Unit), Name: l.Name,
				Less: stepped(d, at, false), More: stepped(d, at, true), Without: edit.Delete(*d, at).String()})
		case has(draft.KindPour) || has(draft.KindUnread):
			without := slices.Delete(slices.Clone(lines), i, i+1)
			v.Rows = append(v.Rows, rowView{Line: i + 1, Name: strings.TrimSpace(line), Unit: string(v.system()), Without: strings.Join(without, "\n")})
		case saysOnly(strings.TrimSpace(line)):
			v.methodLines = append(v.methodLines, i+1)
		}
	}
}

// lineAt returns the pour that stands alone in a line of the text, −1 if none
// does.
func lineAt(d *draft.Draft, number int) int {
	at := slices.IndexFunc(d.Lines, func(l entry.Line) bool { return l.Number == number })
	if at >= 0 && at+1 < len(d.Lines) && d.Lines[at+1].Number == number {
		return -1
	}
	return at
}

// saysOnly reports whether a line is a method, a service or both, and nothing
// else.
func saysOnly(line string) bool {
	words := strings.FieldsFunc(line, func(r rune) bool { return r == ',' })
	for _, w := range words {
		_, method := serving.ParseMethod(w)
		_, service := serving.ParseService(w)
		if !method && !service {
			return false
		}
	}
	return len(words) > 0
}

// stepped returns the draft with one step of the jigger more or less in a line,
// empty if there is none.
func stepped(d *draft.Draft, at int, up bool) string {
	l := &d.Lines[at]
	amount := measure.JiggerStep(l.Amount, l.Unit, up)
	if amount <= 0 {
		return ""
	}
	return edit.SetAmount(*d, at, amount, "").String()
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
		c.Alone = draft.ParsePours(c.Value+" x").Err() == nil
		if u != flavor.Top {
			_, c.Many, _ = strings.Cut(measure.FormatAmount(2, u), " ")
		}
		out = append(out, c)
	}
	return out
}()

// unitWords is every unit for the script, once: by unit its plural, whether it stands alone,
// and its jigger, the step first and then the marks between.
var unitWords = func() string {
	var all []string
	for _, c := range unitChoices {
		alone, marks := "", "1" // what comes whole is counted
		if c.Alone {
			alone = "alone"
		}
		if c.Value != "" {
			every, between := measure.Jigger(flavor.Unit(c.Value))
			var steps []string
			for _, at := range append([]float64{every}, between...) {
				steps = append(steps, strconv.FormatFloat(at, 'f', -1, 64))
			}
			marks = strings.Join(steps, " ")
		}
		all = append(all, strings.Join([]string{c.Value, c.Many, alone, marks}, "|"))
	}
	return strings.Join(all, ";")
}()
