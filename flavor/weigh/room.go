package weigh

import "sync"

// rooms lends lists of a number for each proven drink, which judging a drink fills
// several of. The lists outlive the drinks, so that hardly any is made anew.
type rooms struct{ pool sync.Pool }

// room borrows such a list, all zero, until the Build is [Build.Done].
func (b *Build) room(n int) []float64 {
	list, _ := b.set.rooms.pool.Get().(*[]float64)
	if list == nil || cap(*list) < n {
		list = new(make([]float64, n))
	}
	*list = (*list)[:n]
	clear(*list)
	b.borrowed = append(b.borrowed, list)
	return *list
}

// Done gives back what the build borrowed; it must not be used afterwards. Whoever only
// drops a build loses nothing but the lists.
func (b *Build) Done() {
	for _, list := range b.borrowed {
		b.set.rooms.pool.Put(list)
	}
	*b = Build{}
}
