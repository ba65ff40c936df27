package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
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
		text = wording.LeaveOut(t.Req.Spec.Method, c.Spec.Method)
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
	told := wording.Difference{From: order.Glass, To: glass, Another: !c.Keeps, OtherSpirit: c.Keeps && c.OtherSpirit, Called: c.Called, Gone: c.Gone, Named: c.named(), Lost: c.Lost, Gained: c.Gained}
	return text + ": " + told.String()
}

// otherSpirit reports whether a spirit of another class stands for one that the drink is made on.
func (c *Cover) otherSpirit() bool {
	for k, p := range c.Parts {
		if was := c.For[k]; was.Base() && !p.Profile.Class.StandsForSpirit() && p.ML >= gap.BaseML && p.Profile.Class.Kin() == flavor.KinSpirit && p.Profile.Class != was.Class {
			return was.Class.Kin() == flavor.KinSpirit
		}
	}
	return false
}

// named is what of the leads that are gone a bartender would say: not what goes by the name of the
// very thing that is out, nor what a bottle is made on where its flavours are told.
func (c *Cover) named() []sense.Lost {
	return slices.DeleteFunc(slices.Clone(c.Gone), func(l sense.Lost) bool {
		itself := slices.ContainsFunc(c.For, func(p *flavor.Profile) bool { return p.Name == l.Material })
		madeOn := strings.HasSuffix(l.Material, " wine") || strings.HasSuffix(l.Material, " spirit")
		return itself || madeOn && len(c.Lost)+len(c.Gained) > 0
	})
}

// OnTop reports whether a part goes on top of a drink once the rest of it is mixed: what
// sparkles is lost in a shaker.
func (c *Cover) OnTop(part *flavor.Pour) bool {
	return part.After && part.Profile.Class.Sparkles() && c.Spec.Method != flavor.Build && c.Spec.Method != flavor.Swizzle
}
