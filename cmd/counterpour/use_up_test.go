package main

import "testing"

func TestUseUpCommand(t *testing.T) {
	shelf := file(t, "shelf.txt", "lime juice\nagave syrup\npineapple juice\n")
	for _, c := range []command{
		{name: "three bottles", args: []string{"use-up", "--bottle", "fino sherry", "--bottle", "Apricot liqueur", "mezcal", "--limit", "4"},
			out: []string{"The Halyard Room (an invented house)", "\n1. ", "     Uses ", "fino sherry", "apricot liqueur", "mezcal", "score ", "Left out"}, outNot: []string{"No use found", "triple sec", "\n5. "}},
		{name: "for a guest", args: []string{"use-up", "--bottle", "orgeat", "--bottle", "mezcal", "--avoid", "tree nuts"},
			out: []string{"No use found for\n    orgeat", "must not have it: it contains tree nuts", "Not poured, since it may carry what the guest avoids, or nobody has stated it"}, outNot: []string{"oz  orgeat", "almond", "amaretto", "tree nuts ("}},
		{name: "from the shelf, in millilitres", args: []string{"use-up", "--bottle", "mezcal", "--stock", shelf, "--unit", "ml"}, out: []string{" ml"}, outNot: []string{" oz", "Halyard"}},
		{name: "in one family", args: []string{"use-up", "--bottle", "mezcal", "--family", "sour", "--limit", "2"}, out: []string{"\n1. "}},
		{name: "below a strength", args: []string{"use-up", "--bottle", "mezcal", "--toward", "below 1 %", "--stock", shelf}, out: []string{"No balanced draft pours these bottles", "No use found for"}},
		{name: "no bottle", args: []string{"use-up"}, code: 2, message: []string{"--bottle is not given"}},
		{name: "unknown bottle", args: []string{"use-up", "--bottle", "moon dust"}, code: 2, message: []string{"--bottle", "moon dust", "nearest"}},
		{name: "unknown unit", args: []string{"use-up", "--bottle", "mezcal", "--unit", "bucket"}, code: 2, message: []string{"--unit", "oz or ml"}},
		{name: "unknown family", args: []string{"use-up", "--bottle", "mezcal", "--family", "potion"}, code: 2, message: []string{"--family", "potion"}},
		{name: "a direction", args: []string{"use-up", "--bottle", "mezcal", "--toward", "sweeter"}, code: 2, message: []string{"--toward", "limits only"}},
		{name: "no drafts", args: []string{"use-up", "--bottle", "mezcal", "--limit", "0"}, code: 2, message: []string{"--limit"}},
	} {
		c.run(t)
	}
}
