package main

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor/cover"
)

const bitteredSour = "2 oz aged rum\n3/4 oz lime juice\n1/2 oz falernum\n2 dashes aromatic bitters\nshake, up\n"

func TestCoversSayHowGoodTheyAre(t *testing.T) {
	path := file(t, "draft.txt", draft)
	water := file(t, "water.txt", "soda water\n")
	bourbons := file(t, "bourbons.txt", "bourbon\nrye whiskey\nlemon juice\norgeat\nsimple syrup\naromatic bitters\nsweet vermouth\nhoney syrup\n")
	cola := file(t, "cola.txt", "cola\nvodka\n")
	for _, c := range []command{
		{name: "what a guest notices", args: []string{"cover", path, "--missing", "gin", "--limit", "3", "--max-parts", "1"},
			out: []string{"noticeable steps, a guest won't notice"}, outNot: []string{"nothing here keeps", "cut short"}},
		{name: "nothing at all", args: []string{"cover", path, "--missing", "gin", "--stock", water},
			out: []string{"Without London dry gin\n  nothing here keeps this drink\n"}, outNot: []string{"\n1. "}},
		{name: "nothing near", args: []string{"cover", path, "--missing", "orgeat", "--stock", cola},
			out: []string{"Without orgeat\n  nothing here keeps this drink\n"}, outNot: []string{"\n1. ", "  or a riff: "}}, // vodka and cola is 17 steps away
		{name: "a riff at hand", args: []string{"cover", path, "--missing", "gin", "--stock", bourbons},
			out: []string{"Without London dry gin\n  nothing here keeps this drink\n", "  or a riff: "}},
		{name: "only if a label clears it", input: bitteredSour, args: []string{"cover", "--missing", "falernum", "--avoid", "tree nuts", "--limit", "2", "--max-parts", "1"},
			out: []string{"also without aromatic bitters", "\nBefore you mix for this guest, wash the tins", "\nNot safe as they stand", "only if the label of aromatic bitters clears it for the guest"}},
		{name: "none for a guest who avoids nothing", input: bitteredSour, args: []string{"cover", "--missing", "falernum", "--limit", "2", "--max-parts", "1"},
			outNot: []string{"Not safe", "only if the label", "wash the tins"}},
		{name: "outs", args: []string{"outs", "falernum", "--max-parts", "1"}, out: []string{"notice; score", "\nCautions (", " more with --cautions)"}},
	} {
		c.run(t)
	}
}

// What a label must clear stands apart from what is safe, and holds the pour whose label it is; what
// is safe does not. It stands first where what is safe does without that pour.
func TestUnclearedCoversStandApart(t *testing.T) {
	code, out, message := try(t, bitteredSour, "cover", "--missing", "falernum", "--avoid", "tree nuts", "--limit", "2", "--max-parts", "1")
	require.Equal(t, terminal.ExitDone, code, message)
	head, rest, found := strings.Cut(out, "\nNot safe as they stand")
	require.True(t, found, out)
	assert.Contains(t, head, "number 1 is what to pour, only if the label of aromatic bitters clears it for the guest")
	assert.Contains(t, head, "; else number 3\n")
	unsure, safe, found := strings.Cut(rest, "\nSafe as they stand")
	require.True(t, found, out)
	assert.Contains(t, unsure, "\n1. ")
	assert.Contains(t, unsure, "dashes  aromatic bitters")
	assert.NotContains(t, safe, "dashes  aromatic bitters")
	assert.Contains(t, safe, "\n3. ", "the numbers go on")
}

// The first covers of a list are printed, and how many more there are, unless all are asked for.
func TestTheFirstCoversArePrinted(t *testing.T) {
	a := &shape.CoverAnswer{Near: true, ProvenBest: true}
	for _, text := range []string{"a", "b", "c", "d", "e"} {
		a.Covers = append(a.Covers, shape.Cover{Text: text})
	}
	a.IfLabelClears = []shape.Cover{{Text: "unread"}}
	printed := func(show coversShown) string {
		var b bytes.Buffer
		p := terminal.NewPage(&b)
		showCovers(p, a, show)
		require.NoError(t, p.Close())
		return b.String()
	}
	first := printed(coversShown{})
	assert.Contains(t, first, "3. c")
	assert.Contains(t, first, "2 more; --all lists them")
	assert.NotContains(t, first, "4. d")
	assert.Contains(t, first, "6. unread", "numbered as if all were printed")
	all := printed(coversShown{all: true})
	assert.Contains(t, all, "5. e")
	assert.NotContains(t, all, "more; --all")
}

func TestIncompleteSearchSaysSo(t *testing.T) {
	var b bytes.Buffer
	p := terminal.NewPage(&b)
	showCovers(p, &shape.CoverAnswer{Near: true}, coversShown{})
	require.NoError(t, p.Close())
	assert.Contains(t, b.String(), "cut short")
	b.Reset()
	p = terminal.NewPage(&b)
	showCovers(p, &shape.CoverAnswer{Near: true, ProvenBest: true}, coversShown{})
	require.NoError(t, p.Close())
	assert.NotContains(t, b.String(), "cut short")
}

// TestCautionsAreSaidOnce: a page says each caution once, two of them unless all
// are asked for, those that harm a guest before those of how to keep a pour.
func TestCautionsAreSaidOnce(t *testing.T) {
	eggSour := file(t, "egg.txt", "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\nshake, up\n")
	for _, args := range [][]string{
		{"score", eggSour},
		{"cover", eggSour, "--missing", "gin", "--limit", "5", "--max-parts", "1"},
		{"outs", "falernum", "--max-parts", "1"},
		{"riff", eggSour, "--limit", "5"},
		{"use-up", "--bottle", "mezcal", "--limit", "5"},
	} {
		few, all := cautionsIn(t, args...), cautionsIn(t, append(args, "--cautions")...)
		assert.LessOrEqual(t, len(few), printed.FirstCautions, "%q", args)
		assert.NotEmpty(t, few, "%q", args)
		assert.Equal(t, few, all[:len(few)], "%q: the same come first", args)
		seen := map[string]bool{}
		for _, line := range all {
			line = regexp.MustCompile(`^(\d+(, \d+)*: )`).ReplaceAllString(strings.TrimSpace(line), "")
			assert.False(t, seen[line], "%q: twice: %s", args, line)
			seen[line] = true
		}
	}
	assert.Contains(t, cautionsIn(t, "score", eggSour)[0], "Raw egg")
	assert.Greater(t, len(cautionsIn(t, "score", eggSour, "--cautions")), printed.FirstCautions)
}

// cautionsIn returns the lines under the heading of the cautions; there is one
// such heading.
func cautionsIn(t *testing.T, args ...string) []string {
	t.Helper()
	code, out, message := try(t, "", args...)
	require.Equal(t, terminal.ExitDone, code, message)
	require.Equal(t, 1, strings.Count(out, "\nCautions"), out)
	_, rest, _ := strings.Cut(out, "\nCautions")
	_, rest, _ = strings.Cut(rest, "\n")
	rest, _, _ = strings.Cut(rest, "\n\n")
	return strings.Split(strings.TrimRight(rest, "\n"), "\n")
}

// Every reason for which a cover ranks above a nearer one has its words.
func TestWhyAhead(t *testing.T) {
	for _, why := range cover.AheadReasons() {
		assert.NotEmpty(t, whyAhead[why], why)
	}
	assert.Len(t, whyAhead, len(cover.AheadReasons()))
}
