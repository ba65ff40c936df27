package data

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor/balance"
	"counterpour/flavor/template"
	"counterpour/flavor/trial"
)

func TestScratchTrial(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	fam, err := Families()
	require.NoError(t, err)
	rec, err := Proven()
	require.NoError(t, err)
	book, err := c.Book(rec)
	require.NoError(t, err)
	run := func(name string, tn template.Tuning, advise bool) {
		rig := trial.Rig{Families: fam, Proven: book, Tuning: tn, Advise: advise}
		rich, _ := c.ByID("rich-simple-syrup")
		lemon, _ := c.ByID("lemon-juice")
		bit, _ := c.ByID("aromatic-bitters")
		soda, _ := c.ByID("soda-water")
		rig.Pantry = balance.Pantry{Syrup: rich, Sour: lemon, Bitters: bit, Length: soda}
		r, err := rig.Run(nil)
		require.NoError(t, err)
		fmt.Printf("%-28s n=%d bal %.3f near %.3f fam1 %.3f fam2 %.3f", name, r.Drinks, r.Balanced, r.BalancedOrNear, r.FamilyFirst, r.FamilyInTwo)
		for _, s := range r.Spoilt {
			fmt.Printf(" | x%.2f n=%d auc %.3f own %.3f axis %.3f fix %.3f", s.Up, s.Drinks, s.Area, s.OwnBelow, s.RightAxis, s.FirstFixes)
		}
		fmt.Println()
		analyse(r)
		if os.Getenv("MISSED") != "" {
			for _, m := range r.Missed {
				fmt.Println("   ", m)
			}
		}
	}
	run("default", template.DefaultTuning(), os.Getenv("ADVISE") != "")
}

var sourish = map[string]bool{"sour": true, "bitter-split-sour": true, "tropical-sour": true, "daisy": true, "equal-parts-sour": true, "collins": true, "light-sour": true, "sparkling-sour": true, "swizzle": true, "punch": true}

func analyse(r *trial.Report) {
	for _, grp := range []string{"all", "sourish", "pure"} {
		in := func(f string) bool {
			return grp == "all" || grp == "sourish" && sourish[f] || grp == "pure" && (f == "sour" || f == "daisy" || f == "tropical-sour")
		}
		var proven []float64
		for _, c := range r.Cases {
			if c.Factor == 1 && in(c.Family) {
				proven = append(proven, c.Score)
			}
		}
		for _, lv := range [][2]float64{{2.25, 0.3}, {3, 0.2}} {
			var sp []float64
			own, axis := 0, 0
			type key struct {
				a  template.Axis
				up bool
			}
			det := map[key][3]int{}
			for _, c := range r.Cases {
				if (c.Factor == lv[0] || c.Factor == lv[1]) && in(c.Family) {
					sp = append(sp, c.Score)
					k := key{c.Axis, c.Factor > 1}
					d := det[k]
					d[0]++
					if c.Score < c.Own {
						own++
					}
					if c.Score < 50 {
						d[1]++
					}
					for _, f := range c.Faults[:min(2, len(c.Faults))] {
						if f.Axis == c.Axis && f.High == (c.Factor > 1) {
							axis++
							d[2]++
							break
						}
					}
					det[k] = d
				}
			}
			fmt.Printf("   %-8s x%.2f proven %d auc %.3f own %.3f axis %.3f ", grp, lv[0], len(proven), trial.Area(proven, sp), float64(own)/float64(len(sp)), float64(axis)/float64(len(sp)))
			for _, a := range []template.Axis{0, 1, 2} {
				for _, up := range []bool{true, false} {
					d := det[key{a, up}]
					fmt.Printf(" %v/%v off %.2f ax %.2f", a, up, float64(d[1])/float64(d[0]), float64(d[2])/float64(d[0]))
				}
			}
			fmt.Println()
		}
	}
}
