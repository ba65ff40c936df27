package balance

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
)

// agree has the faults say what a fix does, where it does nothing but pour less, or more, of
// what they name: a fault is worked out from what is usual and a fix from what balances, and
// whoever reads both wants one number. What drinks like it have is then not told, because it
// is another.
func agree(s *flavor.Spec, faults []Fault, fix *Fix) {
	if len(fix.Changes) != 1 {
		return
	}
	c := &fix.Changes[0]
	if c.FromML <= 0 || c.ToML <= 0 {
		return
	}
	less, moved := c.ToML < c.FromML, math.Abs(c.ToML-c.FromML)
	for i := range faults {
		f := &faults[i]
		if f.Profile != c.Profile || f.High != less || f.moveML <= 0 {
			continue
		}
		pour := &s.Pours[c.Pour]
		about := func(ml float64) string { return wording.About(amountNear(s, ml, pour), f.High, f.Profile.Name) }
		beside, says := strings.CutPrefix(f.Text, about(f.moveML))
		if said := about(moved); says && said != about(f.moveML) {
			if f.have {
				beside, f.have = "", false
			}
			f.Text = said + beside
		}
		f.moveML = moved
	}
}
