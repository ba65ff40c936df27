package trial

import (
	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// Spoiling is how a drink is spoilt: the pours of one axis are multiplied.
type Spoiling struct {
	Up, Down float64
}

// Spoilings returns the two degrees that are reported.
func Spoilings() []Spoiling { return []Spoiling{{2.25, 0.3}, {3, 0.2}} }

// spoiltAxes are the axes that drinks are spoilt on.
var spoiltAxes = []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour}

// Spoil multiplies the pours that bring an axis. It reports false if no pour
// is there for it.
func Spoil(s *flavor.Spec, axis ratio.Axis, factor float64) (flavor.Spec, bool) {
	out := s.Clone()
	hit := false
	for i := range out.Pours {
		p := &out.Pours[i]
		if p.Profile.Class.Part() != axis.Part() {
			continue
		}
		p.Amount *= factor
		p.ML *= factor
		hit = true
	}
	return out, hit
}
