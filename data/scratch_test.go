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
		if os.Getenv("MISSED") != "" {
			for _, m := range r.Missed {
				fmt.Println("   ", m)
			}
		}
	}
	run("default", template.DefaultTuning(), true)
}
