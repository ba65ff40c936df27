package station

import (
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/precedent"
)

// Relatives returns up to n of the proven drinks nearest to a drink, see
// [precedent.Book.Relatives]. One that holds what the guest must not have is left out;
// strength and cost are not looked at. It fails if n is below 1 or there is nothing in the
// drink to weigh.
func (s *Station) Relatives(d *flavor.Spec, n int, g guest.Guest) ([]precedent.Relative, error) {
	if n < 1 {
		return nil, flavor.Invalid("n", n, "%d is out of range; ask for at least one relative", n)
	}
	if err := CheckSpec(d); err != nil {
		return nil, err
	}
	g.MaxCost = 0 // nobody pours these now
	may := aim.Limits{Guest: g}
	return s.book.Relatives(d, n, may.AcceptsAll)
}

// Likeness is how much an item is in kind and smell what an ingredient is, 0 to 1.
func (j *Job) Likeness(it *Item, p *flavor.Profile) float64 {
	return it.made.Like(precedent.MakeUpOf(p))
}
