package store

import (
	"context"
	"fmt"
	"slices"

	"counterpour/data/house"
)

// maxPlaces limits the places in a report of damage.
const maxPlaces = 100

// damaged returns an [house.ErrDamaged] with the places, or nil if there are none.
func damaged(op, key string, places []string) error {
	if len(places) == 0 {
		return nil
	}
	err := fail(house.ErrDamaged, op, key, "it is damaged in %d places; restore a backup, and keep this file", len(places))
	if len(places) == 1 {
		err.Message = "it is damaged in one place; restore a backup, and keep this file"
	}
	err.Places = places[:min(len(places), maxPlaces)]
	return err
}

// auditor compares the log of a venue with its records.
type auditor struct {
	last   map[house.Ref]changeRow
	seq    int64
	places []string
}

// audit returns the places where the log, the records and the links of a venue are
// corrupt or contradict each other. linked is false for a schema without links.
func audit(ctx context.Context, c conn, venue string, linked bool) ([]string, error) {
	a := &auditor{last: map[house.Ref]changeRow{}}
	if err := changes(ctx, c, venue, 0, everything, a.change); err != nil {
		return a.places, err
	}
	var head int64
	found, err := one(ctx, c, []any{&head}, `SELECT seq FROM venue WHERE name = $1`, venue)
	if err != nil {
		return a.places, err
	}
	if !found || head != a.seq {
		a.report("the log ends at change %d, the venue says %d", a.seq, head)
	}
	links := map[[2]house.Ref]bool{}
	if err := records(ctx, c, venue, func(r *recordRow) error { a.record(r, links); return nil }); err != nil {
		return a.places, err
	}
	var lost []string
	for ref := range a.last {
		lost = append(lost, fmt.Sprintf("%s is in the log but there is no record of it", ref))
	}
	slices.Sort(lost)
	a.places = append(a.places, lost...)
	if !linked {
		return a.places, nil
	}
	err = a.links(ctx, c, venue, links)
	return a.places, err
}

func (a *auditor) report(format string, args ...any) {
	a.places = append(a.places, fmt.Sprintf(format, args...))
}

func (a *auditor) change(r *changeRow) error {
	at := fmt.Sprintf("change %d (%s, version %d)", r.seq, r.ref, r.version)
	if r.seq != a.seq+1 {
		a.report("%s follows change %d; those between are missing", at, a.seq)
	}
	a.seq = r.seq
	if r.seal != r.sealed() {
		a.report("%s is not as it was written", at)
	} else if _, err := r.change(); err != nil {
		a.report("%s cannot be read: %v", at, err)
	}
	if before := a.last[r.ref].version; r.version != before+1 {
		a.report("%s follows version %d", at, before)
	}
	a.last[r.ref] = *r
	return nil
}

// record compares a record with its last change, collects its links and ticks it off.
func (a *auditor) record(r *recordRow, links map[[2]house.Ref]bool) {
	last, ok := a.last[r.ref]
	delete(a.last, r.ref)
	switch {
	case !ok:
		a.report("record %s is not in the log", r.ref)
		return
	case r.version != last.version || r.seq != last.seq || r.body != last.body || r.gone != (last.body == ""):
		a.report("record %s is not what change %d made it", r.ref, last.seq)
		return
	}
	if r.gone {
		return
	}
	if e, err := r.entry(); err == nil { // unreadable records are reported with their change
		for _, to := range house.Links(e.Item) {
			links[[2]house.Ref{r.ref, to}] = true
		}
	}
}

func (a *auditor) links(ctx context.Context, c conn, venue string, wanted map[[2]house.Ref]bool) error {
	err := each(ctx, c, func(rs rows) error {
		var from, to house.Ref
		if err := rs.Scan(&from.Kind, &from.ID, &to.Kind, &to.ID); err != nil {
			return err
		}
		if !wanted[[2]house.Ref{from, to}] {
			a.report("a link from %s to %s is in no record", from, to)
		}
		delete(wanted, [2]house.Ref{from, to})
		return nil
	}, `SELECT kind, id, to_kind, to_id FROM link WHERE venue = $1 ORDER BY kind, id, to_kind, to_id`, venue)
	var lost []string
	for l := range wanted {
		lost = append(lost, fmt.Sprintf("the link from %s to %s is missing", l[0], l[1]))
	}
	slices.Sort(lost)
	a.places = append(a.places, lost...)
	return err
}
