package measure

import (
	"fmt"

	"counterpour/flavor"
)

// UnitNote says what was assumed about the unit of a pour; "" if nothing was.
func UnitNote(p flavor.Pour) string {
	if p.Profile == nil || hasYield(p.Profile, p.Unit) {
		return ""
	}
	info, ok := infoOf(p.Unit)
	switch {
	case !ok:
		return ""
	case p.Unit == flavor.PartUnit:
		return fmt.Sprintf("a part is taken as %v ml", PartML)
	case p.Unit == flavor.Top:
		return fmt.Sprintf("topping up is taken as %v ml", TopML)
	case p.Unit == flavor.Splash:
		return fmt.Sprintf("a splash is taken as %v ml", SplashML)
	case p.Unit == flavor.Float, p.Unit == flavor.Rinse, p.Unit == flavor.Spritz, p.Unit == flavor.Scoop:
		return fmt.Sprintf("a %s is taken as %v ml", p.Unit, info.size.Value)
	case p.Unit == flavor.Pinch:
		return fmt.Sprintf("a pinch is taken as %v g", PinchG)
	case info.kind == byVolume && bulk(p.Profile) > 0:
		return fmt.Sprintf("%s by volume is taken as it lies in a spoon, %.2f g/ml", p.Profile.Name, bulk(p.Profile))
	}
	return ""
}
