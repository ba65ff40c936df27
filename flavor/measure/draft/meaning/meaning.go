package meaning

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
)

// Meaning is what a draft means to a finder.
type Meaning struct {
	Draft   draft.Draft
	Spec    flavor.Spec       // of the lines that can be read; package assumed has filled it in
	Pours   []int             // for each line of the draft its pour in the spec, −1 if it has none
	Faults  flavor.DataFaults // of the draft and of its names, by line
	Several bool              // the draft holds versions of a drink
}

// resolver gathers what a reading needs.
type resolver struct {
	draft    *draft.Draft
	resolver *naming.Resolver
	tasks    []*counting.Task
	found    flavor.DataFaults // of the draft as a whole
	notes    []string
	name     string
	steps    []string

	several bool              // it holds versions of a drink
	topped  []*flavor.Profile // for each pour of the spec what tops it without an amount, else nil
}

func (r *resolver) note(n string) {
	if n != "" && !slices.Contains(r.notes, n) {
		r.notes = append(r.notes, n)
	}
}

// Of works out what a draft means as it is parsed. It fails only with the failure of the finder,
// wrapped; what is wrong with the draft is in the meaning.
func Of(d draft.Draft, f naming.Finder) (Meaning, error) {
	r := &resolver{draft: &d, resolver: naming.NewResolver(f), name: d.Name, steps: slices.Clone(d.Steps)}
	out := Meaning{Draft: d, Faults: slices.Clone(d.Faults)}
	for _, n := range d.Notes {
		r.note(n)
	}
	r.filledUp()
	r.herbs()
	out.Draft = d
	r.firstLine()
	r.toldByAnother()
	for _, t := range r.tasks {
		r.toldBehind(t)
		if t.Fault == nil {
			r.findBase(t)
		}
	}
	r.note(counting.Units(r.tasks, r.draft))
	for _, t := range r.tasks {
		if t.Fault == nil {
			r.settle(t)
		}
	}
	for _, t := range r.tasks {
		r.decide(t)
		r.bottled(t)
	}
	for _, t := range r.tasks {
		r.sweeten(t)
	}
	for _, t := range r.tasks {
		r.fruitOrLiqueur(t)
	}
	r.unsaid(&out)
	if r.resolver.Err() != nil {
		return Meaning{}, r.resolver.Err()
	}
	out.Faults = append(out.Faults, r.found...)
	out.Spec, out.Pours = r.spec(&out.Faults)
	out.Faults = InOrder(out.Faults)
	out.Draft.Name, out.Several = r.name, r.several
	return out, nil
}
