package edit

import (
	"errors"
	"math"
	"strings"
	"testing"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/words/entry"
)

// Parse never panics, keeps every letter, and every fault has a place; what
// Format writes of a reading is read as the same spec.
func FuzzParse(f *testing.F) {
	for _, s := range append([]string{
		"Halyard Sour\n2 oz London dry gin\n3/4 oz lemon juice\n½ oz simple syrup\n2 dashes aromatic bitters\n6 mint leaves\nshake, up",
		"X\n- 2–3 dashes bitters\n* 1 1/2 fl. oz. gin\n22,5ml rye\ntop up with soda\nhalf a lime\nsheke, up",
		"X\n-2 oz gin\n1/0 oz gin\n1,000 ml gin\nNaN oz gin\n9e9 oz gin\n\xff", "½½ oz\n1½½ oz x\n2--3 oz\n. oz\n,5 oz x", "top\ntop with\nof of",
	}, oddNames...) {
		f.Add(s)
	}
	b := drafttest.Bar()
	f.Fuzz(func(t *testing.T, text string) {
		d := draft.Parse(text)
		if d.String() != text {
			t.Fatalf("the draft is not kept to the letter: %q", d.String())
		}
		checkPlaces(t, &d)
		r, err := reading.Resolve(d, b)
		if err != nil {
			if !strings.Contains(err.Error(), "the index is closed") {
				t.Fatal(err)
			}
			return
		}
		if r.Err() != nil {
			checkShown(t, r.Err())
		}
		for _, p := range r.Spec.Pours {
			if !(p.ML > 0) || p.ML > measure.MaxPourML || p.Profile == nil {
				t.Fatalf("%+v", p)
			}
		}
		if r.Err() != nil || len(r.Spec.Pours) == 0 {
			return
		}
		checkReadsBack(t, r.Spec, b)
	})
}

// checkPlaces holds every line and entry of a draft against its text.
func checkPlaces(t *testing.T, d *draft.Draft) {
	t.Helper()
	if len(d.Faults) > 0 {
		checkShown(t, d.Err())
	}
	if len(d.Lines) > draft.MaxPours {
		t.Fatalf("%d lines", len(d.Lines))
	}
	for _, l := range d.Lines {
		if !(l.Amount >= measure.MinAmount) || math.IsInf(l.Amount, 0) || l.Name == "" || l.Number < 1 {
			t.Fatalf("%+v", l)
		}
		for _, s := range []entry.Span{l.Span, l.AmountAt, l.UnitAt, l.NameAt} {
			if s.Start < 0 || s.End < s.Start || s.End > len(d.String()) {
				t.Fatalf("%+v lies outside of the text", l)
			}
		}
	}
	for _, e := range d.Entries {
		if e.Span.Start < 0 || e.Span.End < e.Span.Start || e.Span.End > len(d.String()) || e.Line < 1 {
			t.Fatalf("%+v lies outside of the text", e)
		}
	}
}

// checkReadsBack holds what Format writes of a spec against the spec.
func checkReadsBack(t *testing.T, s flavor.Spec, b drafttest.Shelf) {
	t.Helper()
	text := Format(s)
	again, err := reading.Read(text, b)
	if err != nil {
		t.Fatalf("%v from\n%s", err, text)
	}
	again.Notes, s.Notes = nil, nil
	if again.Name != s.Name || again.Method != s.Method || again.Service != s.Service || len(again.Pours) != len(s.Pours) {
		t.Fatalf("%+v from\n%s", again, text)
	}
	for i := range s.Pours {
		a, w := again.Pours[i], s.Pours[i]
		if a.Profile != w.Profile || a.Amount != w.Amount || a.Unit != w.Unit || a.After != w.After {
			t.Fatalf("pour %d read back as %v %s %s from\n%s", i, a.Amount, a.Unit, a.Profile.Name, text)
		}
	}
}

func checkShown(t *testing.T, err error) {
	t.Helper()
	var fs flavor.DataFaults
	if !errors.As(err, &fs) || len(fs) == 0 {
		t.Fatalf("not faults: %v", err)
	}
	for _, f := range fs {
		if !strings.HasPrefix(f.Location, "line ") || f.Message == "" || f.Kind == nil {
			t.Fatalf("%+v", f)
		}
	}
}
