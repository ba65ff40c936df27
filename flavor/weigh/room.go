package weigh

import (
	"slices"
	"sync"

	"counterpour/flavor/makeup"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh/forgotten"
	"counterpour/flavor/weigh/proportion"
)

// rooms lends what judging a drink works in: lists of a number for each proven drink, which
// it fills several of, and a desk. They outlive the drinks, so that hardly any is made anew.
type rooms struct{ lists, desks sync.Pool }

// desk is the memory of a Build beside those lists. A Build takes the names that its own
// fields have here for its own.
type desk struct {
	odds, ones []float64
	active     []int
	voices     []voice
	moving     []makeup.Signal
	weights    []float64
	fits       []template.Placed
	logits     []float64
	centres    []centre
	order      []int
	kin        makeup.Kinship
	forgotten  forgotten.Draft
	habits     habits
	proportion proportion.Usual
	precedents proportion.Precedents
	borrowed   []*[]float64 // by the Build that has it
}

// desk borrows a desk until the Build is [Build.Done].
func (r *rooms) desk() *desk {
	if d, ok := r.desks.Get().(*desk); ok {
		return d
	}
	return &desk{}
}

// sized returns a list of n zeros in the memory of one that is no longer needed.
func sized[T any](list *[]T, n int) []T {
	*list = slices.Grow((*list)[:0], n)[:n]
	clear(*list)
	return *list
}

// room borrows a list of n zeros until the Build is [Build.Done].
func (b *Build) room(n int) []float64 {
	list, _ := b.set.rooms.lists.Get().(*[]float64)
	if list == nil {
		list = &[]float64{}
	}
	b.desk.borrowed = append(b.desk.borrowed, list)
	return sized(list, n)
}

// Done gives back what the build borrowed; it must not be used afterwards. Whoever only
// drops a build loses nothing but that.
func (b *Build) Done() {
	if d := b.desk; d != nil {
		for _, list := range d.borrowed {
			b.set.rooms.lists.Put(list)
		}
		clear(d.borrowed)
		d.borrowed = d.borrowed[:0]
		b.set.rooms.desks.Put(d)
	}
	*b = Build{}
}
