package api

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/data"
)

func TestScratch(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	t0 := time.Now()
	k, err := NewKitchen(context.Background(), c, nil)
	require.NoError(t, err)
	fmt.Println("kitchen", time.Since(t0))
	for _, text := range []string{
		"2 oz gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up",
		"1 oz gin\n1 oz artichoke amaro\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 thin orange slices\nshake, up",
		"1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up",
		"2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up",
		"2 oz gin\n3/4 oz honey syrup\n1/4 oz lemon juice\nshake, up",
		"2 oz gin\n3/4 oz simple syrup\n1 oz lemon juice\nshake, up",
	} {
		s, err := k.Read(text)
		require.NoError(t, err)
		t0 := time.Now()
		r, fx, err := k.Score(&s)
		require.NoError(t, err)
		fmt.Println("----", text, time.Since(t0))
		fmt.Printf("score %.1f %s eq %.1f abv %.1f sugar %.1f acid %.2f T %.1f vol %.0f\n", r.Judgement.Score, r.Verdict, r.Judgement.Equivalents, r.Drink.ABV, r.Drink.SugarPer100, r.Drink.AcidPer100, r.Drink.TemperatureC, r.Drink.VolumeML)
		for _, f := range r.Judgement.Fits[:3] {
			fmt.Printf("   %s p=%.2f score=%.0f\n", f.ID, f.Probability, f.Score)
		}
		for _, f := range r.Faults {
			fmt.Printf("   fault %v high=%v dev=%.1f ±%.1f %s\n", f.Axis, f.High, f.Deviation, f.PlusMinus, f.Text)
		}
		for _, f := range fx {
			fmt.Printf("   fix %.0f %s\n", f.Score, f.Text)
		}
	}
	for _, q := range []struct{ text, missing string }{
		{"1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up", "falernum"},
		{"1 oz gin\n1 oz artichoke amaro\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 thin orange slices\nshake, up", "artichoke amaro"},
		{"2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up", "triple sec"},
		{"2 oz bourbon\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "bourbon"},
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "red bitter aperitif"},
		{"2 oz bourbon\n1/2 oz cinnamon syrup\n3/4 oz lemon juice\nshake, up", "cinnamon syrup"},
	} {
		s, err := k.Read(q.text)
		require.NoError(t, err)
		for parts := 1; parts <= 2; parts++ {
			t0 := time.Now()
			_, res, ref, err := k.Cover(context.Background(), CoverRequest{Spec: s, Missing: q.missing, Parts: parts})
			require.NoError(t, err)
			fmt.Println("==== cover", q.missing, parts, time.Since(t0), ref, "before", res.ScoreBefore, res.Unbalanced)
			for _, c := range res.Covers {
				fmt.Printf("   %.2f rank %.2f score %.0f %s\n", c.Distance, 0.0, c.Score, c.Text)
			}
		}
	}
}
