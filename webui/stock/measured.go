package stock

import (
	"counterpour/data/house"
	"counterpour/webui/desk"
	"counterpour/webui/say"
)

// measuredFields ask for what was measured, in a bottle or in what is made.
func measuredFields[T any](group string, at func(*T) *house.Measured) []desk.Field[T] {
	field := func(b desk.Box, of func(*house.Measured) **float64) desk.Field[T] {
		return desk.Optional(group, b, func(t *T) **float64 { return of(at(t)) })
	}
	return []desk.Field[T]{
		field(desk.Box{Name: "abv", Label: say.It("stock.strength"), Unit: "% vol", Hint: say.It("stock.strength-hint")},
			func(m *house.Measured) **float64 { return &m.ABVPct }),
		field(desk.Box{Name: "brix", Label: say.It("stock.brix"), Unit: "°Bx", Hint: say.It("stock.brix-hint")},
			func(m *house.Measured) **float64 { return &m.Brix }),
		field(desk.Box{Name: "sugar", Label: say.It("stock.sugar"), Unit: "g/L", Hint: say.It("stock.sugar-hint")},
			func(m *house.Measured) **float64 { return &m.SugarGPerL }),
		field(desk.Box{Name: "acid", Label: say.It("stock.acid"), Unit: "g/L", Hint: say.It("stock.acid-hint")},
			func(m *house.Measured) **float64 { return &m.AcidGPerL }),
	}
}
