package cover

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/wording"
	"counterpour/flavor/sense"
)

// text says the cover as one bartender to another, and what the guest will notice.
func (t *task) text(c *Cover, glass *sense.Percept) string {
	order, _ := t.order()
	parts := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		parts[i] = wording.Part(&p, c.OnTop(&p))
	}
	text := strings.Join(parts, " + ")
	if len(parts) == 0 {
		text = wording.LeaveOut(t.req.Spec.Method, c.Spec.Method)
		if t.staysLong() {
			text += wording.AsSoftDrink
		}
	}
	text += wording.Without(c.Without)
	for _, ch := range c.Changes {
		text += wording.Moves(ch.Profile, ch.To, ch.Unit)
	}
	if off := c.Spec.LeaveOff(); off != "" {
		text += ", " + off
	}
	told := wording.Difference{From: order.glass, To: glass, Another: !c.Keeps, Gone: c.Gone, Lost: c.Lost, Gained: c.Gained}
	return text + ": " + told.String()
}

// OnTop reports whether a part goes on top of a drink once the rest of it is mixed: what
// sparkles is lost in a shaker.
func (c *Cover) OnTop(part *flavor.Pour) bool {
	return part.After && part.Profile.Class.Sparkles() && c.Spec.Method != flavor.Build && c.Spec.Method != flavor.Swizzle
}
