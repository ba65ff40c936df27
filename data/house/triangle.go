package house

import (
	"fmt"
	"slices"
	"time"
)

// Triangle is a triangle test (ISO 4120): each taster gets three glasses, two of which
// are the same, and names the odd one.
type Triangle struct {
	ID       string            `json:"id"`
	At       time.Time         `json:"at"`    // when it began
	Drink    string            `json:"drink"` // drink in the glasses marked A
	Cover    string            `json:"cover"` // drink in the glasses marked B
	GlassML  float64           `json:"glass_ml"`
	Alpha    float64           `json:"alpha"` // probability of calling equal drinks different
	Share    float64           `json:"share"` // share of people who can tell the difference, which the test is to detect
	Servings []TriangleServing `json:"servings"`
	Closed   bool              `json:"closed"` // no more answers are accepted
}

// TriangleServing is what one taster got, from left to right.
type TriangleServing struct {
	Order  string `json:"order"` // such as "AAB"
	Codes  [3]int `json:"codes"`
	Picked int    `json:"picked,omitempty"` // code of the glass named as odd; 0 for none yet
}

// Ref returns the kind and id of the record.
func (t Triangle) Ref() Ref { return Ref{KindTriangle, t.ID} }

func (t Triangle) check() error {
	err := checks(
		checkTime("at", t.At),
		checkLine("drink", t.Drink, true),
		checkLine("cover", t.Cover, true),
		checkRange("glass_ml", t.GlassML, 1, 1000),
		checkRange("alpha", t.Alpha, 0.001, 0.2),
		checkRange("share", t.Share, 0, 1),
	)
	if err == nil && (len(t.Servings) == 0 || len(t.Servings) > MaxList) {
		err = invalid("servings", len(t.Servings), "servings must be 1 to %d", MaxList)
	}
	for i := range t.Servings {
		if err == nil {
			err = t.Servings[i].check(i)
		}
	}
	return err
}

// triangleOrders are the six orders of two glasses of one drink and one of the other.
var triangleOrders = []string{"AAB", "ABA", "BAA", "BBA", "BAB", "ABB"}

func (s *TriangleServing) check(i int) error {
	field := func(name string) string { return fmt.Sprintf("servings[%d].%s", i, name) }
	if err := oneOf(field("order"), s.Order, triangleOrders); err != nil {
		return err
	}
	for k, code := range s.Codes {
		if err := checkRange(field("codes"), float64(code), 100, 999); err != nil {
			return err
		}
		if slices.Contains(s.Codes[:k], code) {
			return invalid(field("codes"), code, "%s has %d twice; give each glass its own", field("codes"), code)
		}
	}
	if s.Picked != 0 && !slices.Contains(s.Codes[:], s.Picked) {
		return invalid(field("picked"), s.Picked, "%s is %d, which was not before this taster; the codes were %v", field("picked"), s.Picked, s.Codes)
	}
	return nil
}

func (t Triangle) clean() Item {
	t.At, t.Servings = utc(t.At), slices.Clone(t.Servings)
	return t
}
func (t Triangle) withID(id string) Item { t.ID = id; return t }
func (t Triangle) links() []Ref          { return nil }
