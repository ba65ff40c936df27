package naming

import (
	"math"
	"strings"

	"counterpour/flavor"
)

// memory is a finder for one reading, which tries several ways to read a text and asks for the
// same names in each. The books over it share what they found, and leave out what is nearest to
// a name that means nothing, until [Complete] is asked: most such names are asked for only
// because they might be one. It is not safe for concurrent use.
type memory struct {
	Finder
	answers bool // it did so when the reading began
	found   map[question]Found
	kept    *Kept                          // by the finder, for other readings too; nil if it keeps nothing
	left    map[*flavor.DataFault]question // the faults without what is nearest
}

// question is a name and its place.
type question struct {
	name   string
	unit   flavor.Unit
	amount uint64 // the bits: the very amount
	topped bool
}

func asking(name string, pl Place) question {
	return question{name: name, unit: pl.Unit, amount: math.Float64bits(pl.Amount), topped: pl.Topped}
}

func (q question) place() Place {
	return Place{Unit: q.unit, Amount: math.Float64frombits(q.amount), Topped: q.topped}
}

// Remembering returns a finder for one reading: the books over it ask f for each name in each
// place once, and not at all for what a [Keeper] has kept. The faults of unknown names then have to be completed. A finder that remembers
// already is returned as it is.
func Remembering(f Finder) Finder {
	if m, ok := f.(*memory); ok {
		return m
	}
	out := &memory{Finder: f, found: map[question]Found{}, left: map[*flavor.DataFault]question{}}
	if k, ok := f.(Keeper); ok {
		out.kept = k.Kept()
	}
	return out
}

// Complete adds what is nearest to the faults of unknown names that were found over a
// remembering finder. It changes the faults themselves.
func Complete(faults flavor.DataFaults, f Finder) error {
	m, ok := f.(*memory)
	if !ok {
		return nil
	}
	b := NewResolver(m.Finder)
	for _, fault := range faults {
		if q, ok := m.left[fault]; ok {
			fault.Suggest = b.near(q.name, q.place())
			fault.Message = saysUnknown(q.name, fault.Suggest) + strings.TrimPrefix(fault.Message, saysUnknown(q.name, nil))
			delete(m.left, fault)
		}
	}
	return b.Err()
}

// Copied returns a copy of a fault of the resolver that can be changed.
func (b *Resolver) Copied(f *flavor.DataFault) *flavor.DataFault {
	own := *f
	if b.memory != nil {
		if q, ok := b.memory.left[f]; ok {
			b.memory.left[&own] = q
		}
	}
	return &own
}
