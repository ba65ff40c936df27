package desk

import (
	"errors"
	"net/url"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Box is one field of a form: what it asks for, what was typed, and what is
// wrong with that.
type Box struct {
	Name, Label, Unit string
	Hint              string // one sentence
	Kind              string // text, number, area, tick or choice
	Rows              int    // of an area
	Missing           string // what to say if it is left empty; empty if it may be
	Before            string // what goes before the text to offer names for it, if Offers
	Offers            bool   // names of ingredients are offered as it is typed
	Options           []form.Option

	Value  string
	Fault  string
	Beside string // what the catalogue says
	Taken  bool   // filled in with what somebody else changed
	Theirs string // what somebody else changed it to, if Apart
	Apart  bool
}

// Group is some fields under one heading.
type Group struct {
	ID          string
	Title, Hint string
	Boxes       []*Box
}

// Form is a form with a record in it, or what was typed for one.
type Form[T house.Item] struct {
	Item   T
	boxes  []*Box
	Groups []Group
}

// Fill shows a record in a form.
func (d *Desk[T]) Fill(item T) *Form[T] {
	f := d.form(item)
	for i, b := range f.boxes {
		b.Value = d.Fields[i].Show(item)
		if len(b.Options) > 0 {
			b.Options = form.Choose(b.Options, b.Value)
		}
	}
	return f
}

// Read takes a record out of a form that was sent. Every field that cannot be
// read, or breaks a rule of the house by itself, says so.
func (d *Desk[T]) Read(sent url.Values) *Form[T] {
	var zero T
	f := d.form(zero)
	for i, b := range f.boxes {
		b.Value = form.Lines(sent.Get(b.Name))
		if len(b.Options) > 0 {
			b.Options = form.Choose(b.Options, b.Value)
		}
		text := strings.TrimSpace(b.Value)
		switch {
		case text == "":
			b.Fault = b.Missing
		default:
			if b.Fault = d.probe(&d.Fields[i], text); b.Fault == "" {
				_ = d.Fields[i].Take(&f.Item, text) // the probe has taken it once already
			}
		}
	}
	return f
}

// form is an empty form around a record.
func (d *Desk[T]) form(item T) *Form[T] {
	f := &Form[T]{Item: item, Groups: append([]Group(nil), d.Groups...)}
	for i := range d.Fields {
		b := d.Fields[i].Box
		f.boxes = append(f.boxes, &b)
		for g := range f.Groups {
			if f.Groups[g].ID == d.Fields[i].Group {
				f.Groups[g].Boxes = append(f.Groups[g].Boxes, &b)
			}
		}
	}
	return f
}

// probe returns what is wrong with one field, whatever the others hold.
func (d *Desk[T]) probe(field *Field[T], text string) string {
	item := d.Sound(field.Name)
	err := field.Take(&item, text)
	if err == nil {
		err = house.Check(item)
	}
	if err == nil {
		return ""
	}
	return words.Sentence(field.told(err))
}

// Boxes are the fields of a form, in the order of the desk's.
func (f *Form[T]) Boxes() []*Box { return f.boxes }

// Sound reports whether nothing is wrong with any field.
func (f *Form[T]) Sound() bool {
	for _, b := range f.boxes {
		if b.Fault != "" {
			return false
		}
	}
	return true
}

// BoxOf finds a field by its name; one that is not there is blank.
func (f *Form[T]) BoxOf(name string) *Box {
	for _, b := range f.boxes {
		if b.Name == name {
			return b
		}
	}
	return &Box{}
}

// Blame puts what a rule of the house says beside the field that breaks it; what
// is of no field of the form stands beside another.
func (f *Form[T]) Blame(err error, other string) {
	name, message := FieldOf(err)
	at := f.BoxOf(other)
	for _, b := range f.boxes {
		if b.Name == name {
			at = b
		}
	}
	if at.Fault == "" {
		at.Fault = words.Sentence(message)
	}
}

// FieldOf says which field an error is about, if it is one, and what is wrong
// there. An entry of a list is named by its line in the box.
func FieldOf(err error) (name, message string) {
	fault, ok := fieldFault(err)
	if !ok {
		return "", form.Message(err)
	}
	place := fault.Place()
	if place.Index >= 0 {
		return place.List, say.It("desk.line-fault", "Line", place.Index+1, "Trouble", fault.Message)
	}
	return place.Field, fault.Message
}

// fieldFault is the fault of one field that an error is or has for its cause.
func fieldFault(err error) (*flavor.DataFault, bool) {
	var many flavor.DataFaults
	var fault *flavor.DataFault
	ok := !errors.As(err, &many) && errors.As(err, &fault) && fault.Place().Line == 0
	return fault, ok
}
