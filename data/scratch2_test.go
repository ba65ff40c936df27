package data

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor/template"
	"counterpour/flavor/trial"
)

func objective(r *trial.Report) (float64, string) {
	var out float64
	desc := ""
	for _, grp := range []string{"sourish", "pure"} {
		in := func(f string) bool {
			return grp == "sourish" && sourish[f] || grp == "pure" && (f == "sour" || f == "daisy" || f == "tropical-sour")
		}
		var proven []float64
		near := 0.0
		for _, c := range r.Cases {
			if c.Factor == 1 && in(c.Family) {
				proven = append(proven, c.Score)
				if c.Score >= 50 {
					near++
				}
			}
		}
		near /= float64(len(proven))
		desc += fmt.Sprintf(" %s near %.3f", grp, near)
		out -= 3 * math.Max(0, 0.92-near)
		for _, lv := range [][2]float64{{2.25, 0.3}, {3, 0.2}} {
			var sp []float64
			own, axis, off := 0.0, 0.0, 0.0
			for _, c := range r.Cases {
				if (c.Factor == lv[0] || c.Factor == lv[1]) && in(c.Family) {
					sp = append(sp, c.Score)
					if c.Score < c.Own {
						own++
					}
					if c.Score < 50 {
						off++
					}
					for _, f := range c.Faults[:min(2, len(c.Faults))] {
						if f.Axis == c.Axis && f.High == (c.Factor > 1) {
							axis++
							break
						}
					}
				}
			}
			n := float64(len(sp))
			a := trial.Area(proven, sp)
			out += a + own/n + 0.3*axis/n
			desc += fmt.Sprintf(" [auc %.3f own %.3f ax %.3f off %.2f]", a, own/n, axis/n, off/n)
		}
	}
	out -= 4 * math.Max(0, 0.90-r.BalancedOrNear)
	return out, fmt.Sprintf("near %.3f fam1 %.3f fam2 %.3f%s", r.BalancedOrNear, r.FamilyFirst, r.FamilyInTwo, desc)
}

func TestScratchSearch(t *testing.T) {
	if os.Getenv("SEARCH") == "" {
		t.Skip()
	}
	c, err := Embedded()
	require.NoError(t, err)
	fam, _ := Families()
	rec, _ := Proven()
	book, err := c.Book(rec)
	require.NoError(t, err)
	eval := func(tn template.Tuning) (float64, string) {
		rig := trial.Rig{Families: fam, Proven: book, Tuning: tn}
		r, err := rig.Run(nil)
		if err != nil {
			return -99, err.Error()
		}
		return objective(r)
	}
	best := template.DefaultTuning()
	bo, d := eval(best)
	fmt.Printf("%.4f %s\n", bo, d)
	rng := rand.New(rand.NewPCG(1, 2))
	for i := 0; i < 150; i++ {
		tn := best
		jig := func(x *float64, s float64) {
			if rng.Float64() < 0.4 {
				*x *= math.Exp(rng.NormFloat64() * s)
			}
		}
		jig(&tn.RatioDrinks, .4)
		jig(&tn.SpreadDrinks, .4)
		for k := range tn.UsualSpread {
			jig(&tn.UsualSpread[k], .25)
		}
		jig(&tn.Bandwidth, .4)
		jig(&tn.Pull, .4)
		jig(&tn.ExcessWidth, .4)
		jig(&tn.Allowance, .4)
		jig(&tn.SignPenalty, .5)
		jig(&tn.FitWeight, .4)
		o, d := eval(tn)
		if o > bo {
			bo, best = o, tn
			fmt.Printf("%d %.4f %s\n   %+v\n", i, bo, d, tn)
		}
	}
}
