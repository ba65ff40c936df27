package bench

import (
	"slices"
	"strings"

	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// readView is what of a draft was read otherwise than it is written, each with what else
// it may mean at a tap.
type readView struct {
	Lines   []readLine
	Bare    string         // what bare numbers were read as, such as "ounces", if that is open; else empty
	Units   []part.Example // the draft with bare numbers in another unit
	Making  string         // how it is made, where the draft does not say; else empty
	Methods []part.Example // the draft made or served otherwise
}

// readLine is a pour that is called otherwise than it is written.
type readLine struct {
	Written  string
	Amount   string
	Name     string
	ML       string         // empty if the pour is in mL
	Doubtful bool           // the reader worked the name out
	Others   []part.Example // the draft with another ingredient in its place
}

// readBack says what was read as what; nil if every name, unit and method is as written.
func (p *pages) readBack(text string, r *reading.Reading, g guest.Guest) *readView {
	v := &readView{}
	for i, at := range r.Pours {
		if at >= 0 && flavor.NormaliseName(r.Spec.Pours[at].Match.Asked) != flavor.NormaliseName(r.Spec.Pours[at].Profile.Name) {
			v.Lines = append(v.Lines, p.readLine(r, i, g))
		}
	}
	v.bare(r)
	v.making(text, r)
	if len(v.Lines) == 0 && v.Bare == "" && v.Making == "" {
		return nil
	}
	return v
}

// readLine says what one line was read as, and what else it may mean that the guest may
// have.
func (p *pages) readLine(r *reading.Reading, line int, g guest.Guest) readLine {
	pour := &r.Spec.Pours[r.Pours[line]]
	meant := p.bar.MeaningsOf(r, line, g)
	l := readLine{Written: r.Draft.Lines[line].Asked, Amount: part.Amount(pour), Name: pour.Profile.Name, Doubtful: meant.Doubtful}
	if pour.Unit != flavor.Millilitre {
		l.ML = words.Millilitres(pour.ML) + " mL"
	}
	for _, w := range meant.Ways {
		l.Others = append(l.Others, part.Example{Name: w.Says, Text: w.Text})
	}
	return l
}

// bare says what bare numbers were read as, where a drink of them may be in another unit
// as well, and writes it so.
func (v *readView) bare(r *reading.Reading) {
	read, others := remedy.Units(r)
	for _, w := range others {
		v.Units = append(v.Units, part.Example{Name: part.UnitName(w.Unit), Text: w.Text})
	}
	if len(others) > 0 {
		v.Bare = measure.UnitWord(2, read)
	}
}

// making says how a drink is made where the draft does not, and writes the other ways.
func (v *readView) making(text string, r *reading.Reading) {
	methods := []flavor.Method{flavor.Shake, flavor.Stir, flavor.Build}
	services := []flavor.Service{flavor.Up, flavor.Rocks, flavor.Long}
	if r.Draft.Method == "" && slices.Contains(methods, r.Spec.Method) {
		v.Making = string(r.Spec.Method)
		v.Methods = ways(v.Methods, text, methods, r.Spec.Method)
	}
	if r.Draft.Service == "" && slices.Contains(services, r.Spec.Service) {
		if v.Making != "" {
			v.Making += ", "
		}
		v.Making += string(r.Spec.Service)
		v.Methods = ways(v.Methods, text, services, r.Spec.Service)
	}
}

// ways appends a draft for each word but the one that counts already, said on a line of
// its own.
func ways[T ~string](out []part.Example, text string, all []T, but T) []part.Example {
	for _, w := range all {
		if w != but {
			out = append(out, part.Example{Name: string(w), Text: strings.TrimRight(text, "\n ") + "\n" + string(w)})
		}
	}
	return out
}
