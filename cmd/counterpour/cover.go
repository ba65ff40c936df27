package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/api/wire"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/webui/words"
)

// newCover finds covers for a missing ingredient.
//
//	counterpour cover draft.txt --missing "simple syrup" --avoid "tree nuts" --stock shelf.txt
func newCover(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var stock, where string
	var body shape.CoverBody
	var missing []string
	var all bool
	cmd := &cobra.Command{
		Use:   "cover [FILE|-] --missing NAME...",
		Short: "Find what to pour in place of what ran out",
		Long: `Reads a draft, one pour a line, from a file or from the input, and lists what to
pour in place of one ingredient or several so that the finished drink moves least.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(missing) == 0 || slices.ContainsFunc(missing, func(name string) bool { return strings.TrimSpace(name) == "" }) {
				return terminal.Usagef("--missing is not given; name the ingredient that ran out, such as --missing \"simple syrup\"")
			}
			text, file, err := terminal.ReadDraft(cmd, args)
			if err != nil {
				return err
			}
			house, done, err := premises.SnapshotOrNone(cmd.Context(), open, where)
			if err != nil {
				return err
			}
			defer done()
			if body.Stock, err = stockFrom(cmd, house, stock); err != nil {
				return err
			}
			body.Text, body.Missing = &text, wire.NamesOf(missing...)
			answer, err := shape.AnswerCover(cmd.Context(), house, body)
			if err != nil {
				return terminal.Explain(err, file)
			}
			return terminal.Deliver(cmd, *asJSON, answer, func(p *terminal.Page, a *shape.CoverAnswer) {
				showCovers(p, a, coversShown{all: all || cmd.Flags().Changed("limit"), maxABV: body.MaxABV, cautions: *cautions})
			})
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().StringArrayVar(&missing, "missing", nil, "an ingredient that ran out: name, alias or id; may be repeated")
	guestFlags{avoid: &body.Avoid, diet: &body.Diet, maxABV: &body.MaxABV}.add(cmd)
	cmd.Flags().Float64Var(&body.MaxCost, "max-cost", 0, substitutesCostFlag)
	cmd.Flags().StringVar(&where, "house", "", houseOrNoneFlag)
	cmd.Flags().StringVar(&stock, "stock", "", "file that lists what may be poured, one name or id a line, # for comments; the whole catalogue if empty")
	cmd.Flags().BoolVar(&body.Everywhere, "everywhere", false, "list what ranks far behind the best too and, without --stock, treat rare bottles like common ones")
	cmd.Flags().BoolVar(&all, "all", false, "print every cover that was found, not the first of each list; --json and --limit always do")
	cmd.Flags().IntVar(&body.Limit, "limit", service.DefaultCovers, "most covers to list, 1 to 100")
	cmd.Flags().IntVar(&body.MaxParts, "max-parts", service.DefaultMaxParts, "most ingredients that one cover may be made of, 1 to 3")
	return cmd
}

// coversShown says how much of an answer is printed.
type coversShown struct {
	all      bool    // every cover, not the first of each list
	maxABV   float64 // if not 0, each cover states its strength
	cautions bool    // those of every drink too
}

// coversFirst is how many covers of a list are printed unless all are asked for.
const coversFirst = 3

// showCovers lists the covers and then, separately, those that depend on a label.
// Numbering continues from one list to the other.
func showCovers(p *terminal.Page, a *shape.CoverAnswer, show coversShown) {
	names := make([]string, len(a.Missing.Items))
	for i, m := range a.Missing.Items {
		names[i] = m.Name
	}
	p.Line("Without %s", flavor.JoinAnd(names))
	for _, n := range a.Notes {
		p.Line("  note: %s", n)
	}
	showRemoved(p, a.Removed, a.Missing.Items, a.Unstated, a.UnstatedFor)
	others := a.Covers
	if a.LeftOutBest {
		others = nil // leaving it out is told as the best
	}
	if a.LabelsLead {
		others = nil // what is listed first waits for a label
	}
	showVerdict(p, a.Near || a.LabelsLead && a.IfLabelClears[0].Keeps, a.ProvenBest, others, a.IfLabelClears)
	showInstead(p, a)
	switch {
	case a.LabelsLead:
		showLabelsLead(p, a)
	case a.LabelFirst:
		showLabelFirst(p, &a.IfLabelClears[0], len(a.Covers)+1)
	}
	showBarred(p, a)
	printed.CrossContact(p, a.CrossContact)
	if a.Unbalanced && !a.LabelsLead { // what leads is listed with the labels, and may be in balance
		p.Line("  no cover keeps the drink in balance; these come nearest")
	}
	var cautions printed.Cautions
	listed := 0
	list := func(covers []shape.Cover) {
		for i := range covers {
			if i == coversFirst && !show.all {
				p.Head("%d more; --all lists them", len(covers)-i)
				listed += len(covers) - i
				return
			}
			listed++
			c, place := &covers[i], strconv.Itoa(listed)
			p.Head("%s. %s", place, c.Text)
			showCover(p, c)
			for _, other := range c.Also {
				p.Line("     or the same glass by: %s", other)
			}
			if c.Ahead != "" {
				p.Line("     listed above a nearer cover: %s", whyAhead[cover.Ahead(c.Ahead)])
			}
			if show.maxABV > 0 {
				p.Line("     finished at %s %% vol; the guest's limit is %s", terminal.Number(c.ABVPct, 1), terminal.Number(show.maxABV, 1))
			}
			if len(c.Read) > 0 {
				p.Line("     %s", labelsOf(c))
			}
			cautions.Add(place, c.Cautions)
		}
	}
	unsafe := func() {
		if len(a.IfLabelClears) > 0 {
			p.Head("Not safe as they stand: something in these may carry what the guest avoids, or nobody has stated it. Pour one only if its labels clear it for the guest")
		}
		list(a.IfLabelClears)
	}
	if a.LabelsLead {
		unsafe()
		if len(a.Covers) > 0 {
			p.Head("Safe as they stand, where no label can be read")
		}
	}
	list(a.Covers)
	if !a.LabelsLead {
		unsafe()
	}
	cautions.Show(p, show.cautions)
	if n := a.Refused; n.ByAllergen+n.NotInStock > 0 {
		p.Head("Not considered: %d by allergen, %d not in stock", n.ByAllergen, n.NotInStock)
	}
}

// whyAhead says, by the reason for it, why a cover stands above a nearer one.
var whyAhead = map[cover.Ahead]string{
	cover.AheadByCustom:  "the trade or the house pours it",
	cover.AheadByBottles: "fewer bottles",
	cover.AheadByBalance: "better balanced",
	cover.AheadByKind:    "closer in kind to what is out",
}

// showBarred says what a bar would pour and why it does not now or, where nothing else is said,
// that there is nothing.
func showBarred(p *terminal.Page, a *shape.CoverAnswer) {
	if len(a.Covers)+len(a.IfLabelClears)+len(a.Barred) == 0 && a.LeftOut == nil {
		p.Line("  none of the allowed ingredients covers it")
	}
	for _, b := range a.Barred {
		p.Line("  %s", b.Text)
	}
}

// showRemoved lists what else had to be removed, and why; mustSay is what the labels of what is
// not stated must say, if that is known.
func showRemoved(p *terminal.Page, removed, missing, unstated []shape.Ingredient, mustSay []string) {
	for _, r := range removed {
		at := slices.Index(unstated, r)
		switch {
		case slices.Contains(missing, r):
		case at >= 0 && at < len(mustSay):
			p.Line("  also without %s, which may carry what the guest avoids, unless its label %s", r.Name, mustSay[at])
		case at >= 0:
			p.Line("  also without %s, which may carry what the guest avoids: read the label", r.Name)
		default:
			p.Line("  also without %s, which the guest must not have", r.Name)
		}
	}
}

// showInstead says what to do, and what to offer, if nothing is poured instead.
func showInstead(p *terminal.Page, a *shape.CoverAnswer) {
	if c := a.LeftOut; c != nil {
		word := "or"
		if a.LeftOutBest {
			word = "best"
		}
		line := fmt.Sprintf("  %s %s; moves %s, a guest %s notice", word, c.Text, moved(c), c.Notice)
		if c.BesideJND == 0 { // a score holds a soft drink against drinks with alcohol
			line += fmt.Sprintf("; score %s, was %s", words.Points(c.Score), words.Points(c.ScoreBefore))
		}
		p.Line("%s", line)
	}
	if a.Instead == nil {
		return
	}
	if m := a.Instead.Menu; m != nil {
		p.Line("  offer from the menu: %s (%s noticeable steps away)", m.Name, terminal.Number(m.DistanceJND, 1))
	}
	if r := a.Instead.Riff; r != nil {
		p.Line("  or a riff: %s (%s noticeable steps away)", r.Name, terminal.Number(r.DistanceJND, 1))
		for _, x := range r.Spec.Pours {
			p.Row("   "+printed.Amount(x.Amount, x.Unit), x.Ingredient)
		}
	}
}

// showCover lists the pours of a cover and its effect on the drink.
func showCover(p *terminal.Page, c *shape.Cover) {
	for _, x := range c.Spec.Pours {
		p.Row("   "+printed.Amount(x.Amount, x.Unit), x.Ingredient, mark(c, x.Ingredient))
	}
	p.Line("     %s, %s; moves %s, a guest %s notice; score %s, was %s", c.Spec.Method, c.Spec.Service,
		moved(c), c.Notice, words.Points(c.Score), words.Points(c.ScoreBefore))
	printed.NewAllergens(p, c.NewAllergens)
	printed.Ask(p, c.Ask)
}

// moved says how far a cover moves the drink and, for a guest without alcohol, how far
// apart from the alcohol.
func moved(c *shape.Cover) string {
	text := terminal.Number(c.DistanceJND, 2) + " noticeable steps"
	if c.BesideJND > 0 {
		text += " (" + terminal.Number(c.BesideJND, 2) + " beside the alcohol)"
	}
	return text
}

// showVerdict says how good a list of covers is, before the list.
func showVerdict(p *terminal.Page, near, proven bool, covers, ifLabelClears []shape.Cover) {
	keeps := func(c shape.Cover) bool { return c.Keeps }
	switch {
	case near:
	case slices.ContainsFunc(ifLabelClears, keeps):
		p.Line("  no cover that is known to be safe keeps this drink; one listed below does, if its label clears it for the guest")
	case len(covers) > 0:
		p.Line("  nothing here keeps this drink; as another drink, and tell the guest: %s", pouredIn(&covers[0]))
	default:
		p.Line("  nothing here keeps this drink")
	}
	if !proven {
		p.Line("  the search was cut short: these are the best so far, and there may be better")
	}
}

// showLabelFirst says which label is worth reading, since it may clear a cover that is nearer
// than what is safe, and where that is listed.
func showLabelFirst(p *terminal.Page, c *shape.Cover, place int) {
	p.Line("  nearer, but not safe until a label is read: %s (number %d), %s", pouredIn(c), place, labelsOf(c))
}

// showLabelsLead says which label decides about the first of what is listed, and what to pour if it
// does not clear it.
func showLabelsLead(p *terminal.Page, a *shape.CoverAnswer) {
	line := "  number 1 is what to pour, " + labelsOf(&a.IfLabelClears[0])
	if len(a.Covers) > 0 {
		line += fmt.Sprintf("; else number %d", len(a.IfLabelClears)+1)
	}
	p.Line("%s", line)
}

// pouredIn names what a cover pours instead.
func pouredIn(c *shape.Cover) string {
	if len(c.Parts) == 0 {
		return "leaving it out"
	}
	parts := make([]string, len(c.Parts))
	for i, x := range c.Parts {
		parts[i] = printed.Amount(x.Amount, x.Unit) + " " + x.Name
	}
	return flavor.JoinAnd(parts)
}

// labelsOf names the labels that must be read before a guest may have a cover, and what they must
// say.
func labelsOf(c *shape.Cover) string {
	names := make([]string, len(c.Read))
	for i, id := range c.Read {
		names[i] = id
		for _, x := range c.Spec.Pours {
			if x.ID == id {
				names[i] = x.Name
			}
		}
	}
	text := "only if the label of " + flavor.JoinAnd(names) + " clears it for the guest"
	same := !slices.ContainsFunc(c.ReadFor, func(must string) bool { return must != c.ReadFor[0] })
	switch {
	case len(c.ReadFor) == 0:
		return text
	case same:
		return text + ": it " + c.ReadFor[0]
	}
	for i, must := range c.ReadFor {
		names[i] += " " + must
	}
	return text + ": " + flavor.JoinAnd(names)
}

// mark says how a cover changes a pour.
func mark(c *shape.Cover, name string) string {
	for _, x := range c.Parts {
		switch {
		case x.Name == name && x.OnTop:
			return "instead, on top"
		case x.Name == name:
			return "instead"
		}
	}
	for _, x := range c.Changes {
		if x.Name == name {
			return "was " + x.From
		}
	}
	return ""
}
