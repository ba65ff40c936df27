package cover

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/wording"
	"counterpour/flavor/measure"
	"counterpour/flavor/sense"
)

// text says the cover as one bartender to another, and what the guest will notice.
func (t *task) text(c *Cover, glass *sense.Glass) string {
	parts := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		parts[i] = measure.FormatAmount(p.Amount, p.Unit) + " " + p.Profile.Name
		if c.OnTop(&p) {
			parts[i] += " on top"
		}
	}
	text := strings.Join(parts, " + ")
	if len(parts) == 0 {
		text = "leave it out"
		if m := c.Spec.Method; m != t.req.Spec.Method {
			text += " and " + string(m)
		}
	}
	for _, ch := range c.Changes {
		text += fmt.Sprintf(", %s to %s", ch.Profile.Name, measure.FormatAmount(ch.To, ch.Unit))
		if ch.Profile.Base() {
			text += " (nothing else keeps the balance)"
		}
	}
	change := wording.Change{From: t.glass, To: glass, Another: !c.Keeps, Gone: c.Gone, Lost: c.Lost, Gained: c.Gained}
	return text + ": " + change.String()
}

// OnTop reports whether a part goes on top of a drink once the rest of it is mixed: what
// sparkles is lost in a shaker.
func (c *Cover) OnTop(part *flavor.Pour) bool {
	return part.After && part.Profile.Class.Sparkles() && c.Spec.Method != flavor.Build && c.Spec.Method != flavor.Swizzle
}
