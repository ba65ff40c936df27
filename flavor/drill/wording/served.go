package wording

import (
	"fmt"
	"math"

	"counterpour/flavor/drill/handling"
)

var looks = [...]string{
	handling.Still:     "still, without air in it",
	handling.Airy:      "full of fine air",
	handling.Headed:    "under a head of foam",
	handling.Headless:  "without its head of foam",
	handling.Sparkling: "sparkling",
	handling.Flat:      "flat, without a bubble",
}

// ways say of each way to make a drink wrong what was done, and what to do the next time.
var ways = [handling.NumWays]struct{ did, mend string }{
	handling.StirredInstead: {"stirred instead of shaken", "Shake it hard, about 12 s: that is colder than stirring, and beats air in."},
	handling.ShakenInstead:  {"shaken instead of stirred", "Stir it for 20 to 30 s: shaking waters it further and fills it with air."},
	handling.BuiltInstead:   {"built in its glass, neither shaken nor stirred", "Shake or stir it before it meets the ice of its glass, which chills it less and waters it little."},
	handling.WithoutIce:     {"made without ice", "Ice does two things, it chills and it waters: without it the drink is warm, short and strong."},
	handling.OnSlush:        {"made on slush, ice that was half melted", "Tip the water off and take fresh ice: water on the ice goes into the drink and cools nothing."},
	handling.FromHotBar:     {"made with bottles and tins that stood in the heat", "Keep bottles and vessels out of the heat: the warmer they are, the more ice melts before the drink is cold."},
	handling.Fizzless:       {"topped from a bottle that had lost its fizz", "Open a fresh, cold bottle: the amounts are right, and the fizz is half of such a drink."},
}

// Did says what a hand did wrong: "stirred instead of shaken".
func Did(w handling.Way) string { return ways[w].did }

// Served says what is in the glass: "14.2 % vol, 167 ml, −4 °C, full of fine air".
func Served(s *handling.Served) string {
	degrees := math.Round(s.TemperatureC)
	sign := ""
	if degrees < 0 {
		sign = "−"
	}
	return fmt.Sprintf("%.1f %% vol, %.0f ml, %s%.0f °C, %s", s.ABV, s.VolumeML, sign, math.Abs(degrees), looks[s.Look])
}

// Watered says how much water the ice gave a drink that was made wrong, and gives a drink
// properly made, and what to do the next time.
func Watered(proper *handling.Served, wrong *handling.Mishap) string {
	if math.Abs(proper.WaterPct-wrong.WaterPct) < 0.5 {
		return fmt.Sprintf("The water of the ice is right, %.0f %%. %s", proper.WaterPct, ways[wrong.Way].mend)
	}
	return fmt.Sprintf("Properly made it takes %.0f %% of water from the ice, here %.0f %%. %s", proper.WaterPct, wrong.WaterPct, ways[wrong.Way].mend)
}

// NotDone says that something else than what was done stands otherwise in the glass.
func NotDone(other *handling.Mishap) string {
	return fmt.Sprintf("Not %s: that would stand at %s.", Did(other.Way), Served(&other.Served))
}
