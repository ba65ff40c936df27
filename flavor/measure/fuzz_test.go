package measure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"counterpour/flavor"
)

// Parse never panics; it gives a usable draft or faults that can be shown.
func FuzzParse(f *testing.F) {
	for _, s := range append([]string{
		"Halyard Sour\n2 oz London dry gin\n3/4 oz lemon juice\n½ oz simple syrup\n2 dashes aromatic bitters\n6 mint leaves\nshake, up",
		"X\n- 2–3 dashes bitters\n* 1 1/2 fl. oz. gin\n22,5ml rye\ntop up with soda\nhalf a lime\nsheke, up",
		"X\n-2 oz gin\n1/0 oz gin\n1,000 ml gin\nNaN oz gin\n9e9 oz gin\n\xff", "½½ oz\n1½½ oz x\n2--3 oz\n. oz\n,5 oz x", "top\ntop with\nof of",
	}, oddNames...) {
		f.Add(s)
	}
	b := bar()
	f.Fuzz(func(t *testing.T, text string) {
		d, err := Parse(text)
		if err != nil {
			checkShown(t, err)
			return
		}
		if len(d.Lines) == 0 || len(d.Lines) > MaxPours {
			t.Fatalf("%d lines", len(d.Lines))
		}
		for _, l := range d.Lines {
			if !(l.Amount >= MinAmount) || math.IsInf(l.Amount, 0) || l.Name == "" || l.Number < 1 {
				t.Fatalf("%+v", l)
			}
		}
		s, err := Resolve(d, b)
		if err != nil {
			if !strings.Contains(err.Error(), "the index is closed") {
				checkShown(t, err)
			}
			return
		}
		for _, p := range s.Pours {
			if !positive(p.ML) || p.ML > MaxPourML || p.Profile == nil {
				t.Fatalf("%+v", p)
			}
		}
		again, err := Parse(Format(s))
		if err != nil || len(again.Lines) != len(s.Pours) || again.Name != s.Name {
			t.Fatalf("%v: %+v from\n%s", err, again, Format(s))
		}
	})
}

func checkShown(t *testing.T, err error) {
	t.Helper()
	var fs flavor.Faults
	if !errors.As(err, &fs) || len(fs) == 0 {
		t.Fatalf("not faults: %v", err)
	}
	for _, f := range fs {
		if !strings.HasPrefix(f.Location, "line ") || f.Message == "" || f.Kind == nil {
			t.Fatalf("%+v", f)
		}
	}
}
