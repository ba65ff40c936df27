package wording

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
	"counterpour/flavor/ratio"
)

// IsOff asks what a guest would say of a drink that a slip spoilt.
func IsOff(drink string) string {
	return fmt.Sprintf("This %s is off: one slip of the hand. What would a guest say of it?", drink)
}

// ToMend asks for a drink to be mended.
func ToMend(drink string) string {
	return fmt.Sprintf("This %s is off: one pour is wrong. Change one pour to fix it.", drink)
}

// ToOrder asks for three drinks to be put in order of an axis.
func ToOrder(a ratio.Axis) string {
	return fmt.Sprintf("Put these three in order of how %v they finish, the least first.", a)
}

// ToGuess asks for a strength and a volume, to within so many % vol and mL, and says what stands
// on the labels, which nobody has to know by heart.
func ToGuess(s *flavor.Spec, abv, volume float64) string {
	var labels []string
	for i := range s.Pours {
		if p := s.Pours[i].Profile; p.ABV.Value >= leastOnLabel {
			if text := fmt.Sprintf("%s %.3g %%", p.Name, p.ABV.Value); !slices.Contains(labels, text) {
				labels = append(labels, text)
			}
		}
	}
	return fmt.Sprintf("How strong does this finish, to within %v %% vol, and how large, to within %v ml? On the labels: %s.", abv, volume, strings.Join(labels, ", "))
}

// leastOnLabel is the strength, in % vol, from which a label states it: Regulation (EU) No
// 1169/2011, Article 9 (1) (k), has it above 1.2.
const leastOnLabel = 1.2

// ToCover asks what keeps a drink of which something is out.
func ToCover(out, drink string) string {
	return fmt.Sprintf("%s is out. Which of these keeps the %s best? For all the points, say which aromas are lost.", out, drink)
}

// ToRead asks for the family of a drink by its parts.
func ToRead(s *flavor.Spec) string { return fmt.Sprintf("Which family pours this: %s?", Parts(s)) }

// WhatDid asks how a drink was made wrong, by what stands in the glass.
func WhatDid(drink string, is, proper *handling.Served) string {
	return fmt.Sprintf("This %s was poured right and made wrong. In the glass: %s. Made properly: %s. What did the hand do?", drink, Served(is), Served(proper))
}
