package data_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
)

// What is hot, cold and iced follows from the whole draft, never from its glass
// alone: common practice, no source. Some glasses only suggest it; then a note says
// what was taken.
func TestHeatIsReadFromTheDraft(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for _, x := range []struct {
		text    string
		service flavor.Service
		noted   bool
	}{
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|build, mug", flavor.Hot, false},
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz water|build, mug", flavor.Hot, true},
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|build", flavor.Hot, true},
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz boiling water|build, rocks glass", flavor.Hot, true},
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water", flavor.Hot, true},
		{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz water|build, hot", flavor.Hot, false},
		{"1 1/2 oz aged rum|1 whole egg|3/4 oz simple syrup|hot milk 4 oz|shake the rest, mug", flavor.Hot, false},
		{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, mug over ice", flavor.Long, true},
		{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, mug", flavor.Long, true},
		{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, copper mug", flavor.Long, false},
		{"1 1/2 oz aged rum|1 whole egg|3/4 oz simple syrup|1 1/2 oz whole milk|1/2 oz heavy cream|shake, mug", flavor.Up, true},
		{"1 1/2 oz aged rum|1 whole egg|3/4 oz simple syrup|3 oz whole milk|mug", flavor.Up, true},
		{"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|shake, mug over ice", flavor.Rocks, true},
		{"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|shake with ice, mug", flavor.Up, true},
		{"1 1/2 oz bourbon|4 oz cold brew coffee|1/2 oz simple syrup|build over ice, mug", flavor.Long, true},
		{"1 1/2 oz bourbon|1 oz hot espresso|1/2 oz simple syrup|shake, up", flavor.Up, false},
		{"2 oz rye|1 tsp simple syrup|3 dashes anise bitters|stir, neat", flavor.Up, true},
		{"2 oz rye|1 tsp simple syrup|3 dashes anise bitters|stir, rocks glass without ice", flavor.Up, false},
		{"2 oz rye|1 tsp simple syrup|3 dashes anise bitters|stir, room temperature", flavor.Neat, false},
		{"2 oz rye|1 tsp simple syrup|build, neat", flavor.Neat, false},
	} {
		s, err := c.ReadSpec("", strings.ReplaceAll(x.text, "|", "\n"))
		require.NoError(t, err, x.text)
		assert.Equal(t, x.service, s.Service, x.text)
		notes := strings.Join(s.Notes, "\n")
		said := strings.Contains(notes, " taken as ") || strings.Contains(notes, " makes it a ")
		assert.Equal(t, x.noted, said, "%s: %v", x.text, s.Notes)
		again, err := c.ReadSpec("", edit.Format(s))
		require.NoError(t, err, x.text)
		for i := range s.Pours {
			assert.Equal(t, s.Pours[i].Heat, again.Pours[i].Heat, "%s: written and read again", x.text)
		}
		assert.Equal(t, s.Service, again.Service, "%s: written and read again", x.text)
	}
}

// What a line says of the heat of its pour, and what only belongs to a name.
func TestHeatOfAPour(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for text, heat := range map[string]flavor.Heat{
		"4 oz hot water": flavor.HeatHot, "4 oz boiling water": flavor.HeatHot, "4 oz water (hot)": flavor.HeatHot, "4 oz hot coffee": flavor.HeatHot,
		"4 oz steamed whole milk": flavor.HeatHot, "4 oz warm red wine": flavor.HeatHot,
		"4 oz cold water": flavor.HeatCold, "4 oz iced black tea": flavor.HeatCold, "2 oz cold brew coffee": flavor.HeatCold, "2 oz chilled espresso": flavor.HeatCold,
		"4 oz water": "", "1 dash hot sauce": "", "2 oz cold gin": "", "1/2 oz hot pepper sauce": "",
	} {
		s, err := c.ReadSpec("", "2 oz bourbon\n"+text+"\nbuild, rocks")
		require.NoError(t, err, text)
		assert.Equal(t, heat, s.Pours[1].Warmth(), text)
	}
}
