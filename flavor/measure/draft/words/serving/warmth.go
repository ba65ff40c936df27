package serving

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/vocabulary"
)

// What bars write for how warm a pour is; common practice.
var (
	hotWords  = vocabulary.Words(`hot boiling boiled warm warmed heated steamed steaming piping scalding heiß heiss chaud chaude caliente caldo calda quente heet`)
	coldWords = vocabulary.Words(`cold iced chilled ice-cold kalt froid froide frío fría frio fria freddo fredda koud`)
)

// Warmth returns how warm a word says that a pour is, empty if it says nothing of that.
func Warmth(w string) flavor.Heat {
	switch {
	case hotWords.Has(w):
		return flavor.HeatHot
	case coldWords.Has(w):
		return flavor.HeatCold
	}
	return ""
}
