package house

import "slices"

// KeepPoured completes the edits of bottles so that what is poured changes only if
// somebody says so. A bottle that comes to others of its ingredient, new or filled up, may
// stand before the one that is poured by its name alone: then the one that is poured is
// marked as the well. A bottle that comes with that mark takes the pour.
func KeepPoured(there []Kept[Bottle], edits []Edit) []Edit {
	after, version := map[string]Bottle{}, map[string]int64{}
	for _, k := range there {
		after[k.Item.ID], version[k.Item.ID] = k.Item, k.Version
	}
	came := map[string]bool{}
	for _, e := range edits {
		if e.ref.Kind != KindBottle {
			continue
		}
		b, kept := e.item.(Bottle)
		if !kept {
			delete(after, e.ref.ID)
			continue
		}
		old, known := after[b.ID]
		came[b.ID] = b.There() && !(known && old.There() && old.Ingredient == b.Ingredient)
		after[b.ID] = b
	}
	next := wellsOf(after)
	before := Wells(Items(there))
	for _, id := range sortedKeys(before) {
		old, took := before[id], next[id]
		now, kept := after[old.ID]
		if !old.There() || !kept || !now.There() || now.Ingredient != id || took.ID == old.ID || took.Well || !came[took.ID] {
			continue
		}
		now.Well = true
		at := slices.IndexFunc(edits, func(e Edit) bool { return e.ref == now.Ref() })
		if at < 0 {
			edits = append(edits, Put(now, version[now.ID]))
		} else {
			edits[at] = Put(now, edits[at].version)
		}
	}
	return edits
}

func wellsOf(bottles map[string]Bottle) map[string]Bottle {
	var list []Bottle
	for _, id := range sortedKeys(bottles) {
		list = append(list, bottles[id])
	}
	return Wells(list)
}
