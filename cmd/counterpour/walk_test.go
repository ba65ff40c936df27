package main

import (
	"testing"
)

func TestWalkCommand(t *testing.T) {
	from := file(t, "from.txt", plainSour)
	bad := file(t, "bad.txt", "2 oz gin\n1 oz moon dust\n")
	nuts := file(t, "nuts.txt", "2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\nshake, up\n")
	folder := t.TempDir()
	for _, c := range []command{
		{name: "a file to a drink of the house", args: []string{"walk", from, "brass chronometer", "--steps", "2"},
			out: []string{"1. The first drink", "4. Brass Chronometer: ", "noticeable steps from the one before", "4 pours of 60 mL: 240 mL in all", "g of ethanol", "US standard drinks", "Cautions", "unborn child"}, outNot: []string{"\n5. "}},
		{name: "the input to a file", input: "2 oz bourbon\n2 tsp simple syrup\n2 dashes aromatic bitters\nstir, rocks\n", args: []string{"walk", "-", from, "--steps", "1", "--pour", "45"}, out: []string{"\n3. ", "3 pours of 45 mL"}},
		{name: "the input twice", args: []string{"walk", "-", "-"}, code: 2, message: []string{"cannot both be the input"}},
		{name: "one end", args: []string{"walk", from}, code: 2, message: []string{"walk FROM TO"}},
		{name: "no such drink", args: []string{"walk", from, "brass chron"}, code: 2, message: []string{"TO: ", "brass chron", "Brass Chronometer", "no file of that name"}},
		{name: "a folder", args: []string{"walk", folder, from}, code: 2, message: []string{"FROM: ", "no drink of the house"}},
		{name: "a bad line", args: []string{"walk", from, bad}, code: 2, message: []string{"bad.txt, line 2", "moon dust"}},
		{name: "for a guest", args: []string{"walk", from, nuts, "--avoid", "tree nuts"}, code: 2, message: []string{"TO: ", "orgeat is not for this guest"}},
		{name: "weaker than its ends", args: []string{"walk", from, "Brass Chronometer", "--max-abv", "9"}, code: 2, message: []string{"FROM: ", "above the limit of 9.0"}},
		{name: "a drink and itself", args: []string{"walk", from, from}, code: 2, message: []string{"--steps", "serve one or the other"}},
		{name: "no steps", args: []string{"walk", from, "Brass Chronometer", "--steps", "0"}, code: 2, message: []string{"--steps"}},
		{name: "a bucket", args: []string{"walk", from, "Brass Chronometer", "--pour", "900"}, code: 2, message: []string{"--pour"}},
	} {
		c.run(t)
	}
}
