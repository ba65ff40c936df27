package training

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// What is typed chooses by number, by a whole name, or by words of one name and of no other.
func TestChosenIn(t *testing.T) {
	names := []string{"sour", "sour with soda", "stirred short", "without ice"}
	for typed, want := range map[string]int{
		"2": 1, " 4 ": 3, "sour": 0, "It's a sour": 0, "soda": 1, "soda sour": 1, "stirred": 2, "no ice": 3,
	} {
		got, err := chosenIn(typed, len(names), func(i int) []string { return names[i : i+1] })
		assert.NoError(t, err, typed)
		assert.Equal(t, want, got, typed)
	}
	for typed, says := range map[string]string{
		"5": "none of these", "0": "none of these", "": "none of these", "so": "none of these", "with": "may be 2 or 4", "too": "none of these",
	} {
		_, err := chosenIn(typed, len(names), func(i int) []string { return names[i : i+1] })
		assert.ErrorIs(t, err, flavor.ErrInvalid, typed)
		assert.ErrorContains(t, err, says, typed)
	}
}

// A guess is two numbers, the strength first unless a sign says otherwise.
func TestGuessIn(t *testing.T) {
	for typed, want := range map[string][2]float64{
		"14 150": {14, 150}, "150 ml at 14 %": {14, 150}, "14.5 % vol, 15 cl": {14.5, 150}, "14, 150": {14, 150},
	} {
		got, err := guessIn(typed)
		assert.NoError(t, err, typed)
		assert.InDelta(t, want[0], got.ABVPct, 1e-9, typed)
		assert.InDelta(t, want[1], got.VolumeML, 1e-9, typed)
	}
	_, err := guessIn("strong")
	assert.ErrorContains(t, err, "write two numbers")
}
