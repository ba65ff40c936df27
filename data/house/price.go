package house

// mostPrice is above the price of any drink; a higher one is a mistake.
const mostPrice = 1e6

// MenuPrice is what a drink costs on the menu, without tax. Its id is the id of the spec.
type MenuPrice struct {
	Spec     string  `json:"spec"`
	Amount   float64 `json:"amount"`   // above 0
	Currency string  `json:"currency"` // three letters, as in ISO 4217
}

// Ref returns the kind and id of the record.
func (p MenuPrice) Ref() Ref { return Ref{KindPrice, p.Spec} }

func (p MenuPrice) check() error {
	if p.Amount == 0 || p.Currency == "" {
		return invalid("amount", p.Amount, "a price is above zero, in a currency")
	}
	return checks(checkRange("amount", p.Amount, 0, mostPrice), checkCurrency(p.Currency))
}
func (p MenuPrice) clean() Item           { return p }
func (p MenuPrice) withID(id string) Item { p.Spec = id; return p }
func (p MenuPrice) links() []Ref          { return []Ref{{KindSpec, p.Spec}} }
