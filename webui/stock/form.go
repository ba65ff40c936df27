package stock

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

// formBox is one field of a form: what it asks for, what was typed, and what is
// wrong with that.
type formBox struct {
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

// formGroup is some fields under one heading.
type formGroup struct {
	ID          string
	Title, Hint string
	Boxes       []*formBox
}

// formField is a field of a record: how it is shown, and read.
type formField[T any] struct {
	formBox
	group string // id of its group
	show  func(T) string
	take  func(*T, string) error // of a text that is not empty
}

// textField keeps what is typed, but for the space around it.
func textField[T any](group string, b formBox, at func(*T) *string) formField[T] {
	if b.Kind == "" {
		b.Kind = "text"
	}
	return formField[T]{b, group, func(t T) string { return *at(&t) },
		func(t *T, text string) error { *at(t) = text; return nil }}
}

// filledForm is a form with a record in it, or what was typed for one.
type filledForm[T house.Item] struct {
	item   T
	boxes  []*formBox
	groups []formGroup
}

// fill shows a record in a form.
func (d *stockDesk[T]) fill(item T) *filledForm[T] {
	f := d.form(item)
	for i, b := range f.boxes {
		b.Value = d.fields[i].show(item)
		if len(b.Options) > 0 {
			b.Options = form.Choose(b.Options, b.Value)
		}
	}
	return f
}

// read takes a record out of a form that was sent. Every field that cannot be
// read, or breaks a rule of the house by itself, says so.
func (d *stockDesk[T]) read(sent url.Values) *filledForm[T] {
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
			if b.Fault = d.probe(&d.fields[i], text); b.Fault == "" {
				_ = d.fields[i].take(&f.item, text) // the probe has taken it once already
			}
		}
	}
	return f
}

// form is an empty form around a record.
func (d *stockDesk[T]) form(item T) *filledForm[T] {
	f := &filledForm[T]{item: item, groups: append([]formGroup(nil), d.groups...)}
	for i := range d.fields {
		b := d.fields[i].formBox
		f.boxes = append(f.boxes, &b)
		for g := range f.groups {
			if f.groups[g].ID == d.fields[i].group {
				f.groups[g].Boxes = append(f.groups[g].Boxes, &b)
			}
		}
	}
	return f
}

// probe returns what is wrong with one field, whatever the others hold.
func (d *stockDesk[T]) probe(field *formField[T], text string) string {
	item := d.sound(field.Name)
	err := field.take(&item, text)
	if err == nil {
		err = house.Check(item)
	}
	if err == nil {
		return ""
	}
	return words.Sentence(field.told(err))
}

// sound reports whether nothing is wrong with any field.
func (f *filledForm[T]) sound() bool {
	for _, b := range f.boxes {
		if b.Fault != "" {
			return false
		}
	}
	return true
}

// box finds a field by its name; one that is not there is blank.
func (f *filledForm[T]) box(name string) *formBox {
	for _, b := range f.boxes {
		if b.Name == name {
			return b
		}
	}
	return &formBox{}
}

// blame puts what a rule of the house says beside the field that breaks it; what
// is of no field of the form stands beside another.
func (f *filledForm[T]) blame(err error, other string) {
	name, message := fieldOf(err)
	at := f.box(other)
	for _, b := range f.boxes {
		if b.Name == name {
			at = b
		}
	}
	if at.Fault == "" {
		at.Fault = words.Sentence(message)
	}
}

// fieldOf says which field an error is about, if it is one, and what is wrong
// there. An entry of a list is named by its line in the box.
func fieldOf(err error) (name, message string) {
	fault, ok := fieldFault(err)
	if !ok {
		return "", form.Message(err)
	}
	place := fault.Place()
	if place.Index >= 0 {
		return place.List, say.It("stock.line-fault", "Line", place.Index+1, "Trouble", fault.Message)
	}
	return place.Field, fault.Message
}

// fieldFault is the fault of one field that an error is or has for its cause.
func fieldFault(err error) (*flavor.Fault, bool) {
	var many flavor.Faults
	var fault *flavor.Fault
	ok := !errors.As(err, &many) && errors.As(err, &fault) && fault.Place().Line == 0
	return fault, ok
}
