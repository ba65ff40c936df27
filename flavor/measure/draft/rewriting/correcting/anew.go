package correcting

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// otherSheet says that what stands before it is of another drink: "no wait, that's the other sheet", "wrong
// card". Common practice, no source.
var otherSheet = pattern.Of(`(?i)^(?:(?:no|nope|wait|sorry|oops|hang on|hold on|scratch|ah|oh|actually)[ \t,.-]+)*(?:(?:that's|thats|that is|that was|this is|it's|those are|i read|read|looked at|got)[ \t]+)?(?:(?:from|for|off)[ \t]+)?(?:the[ \t]+|an?[ \t]+|my[ \t]+|our[ \t]+)?(?:other|wrong|old|another|different)[ \t]+(?:sheet|card|one|drink|page|spec|recipe|version|list|line|thing|ticket|order)$`)

// measureless are words of an amount without a unit that every bar has: "two fingers".
var measureless = vocabulary.Words(`finger fingers shot shots glass glasses glug glugs splash a an half the of uh um er`)

// toldAnew takes out of a text the pours that words take back behind them, where all of them are told anew
// with their amounts, or where the words say that they are of another drink.
func (c *corrector) toldAnew() (edits []edit, notes []string) {
	for i := 1; i+1 < len(c.clauses); i++ {
		cl := &c.clauses[i]
		rest, armed, _ := withoutLeads(cl.toks)
		end, other := i, c.ofAnother(i)
		switch {
		case other > 0:
			end = other - 1
		case !armed || len(rest) > 0:
			continue
		}
		first := c.firstPour(i)
		if first < 0 || end+1 >= len(c.clauses) {
			continue
		}
		at := entry.Span{Start: c.clauses[first].start(), End: c.clauses[end].end()}
		before := c.text[at.Start:cl.start()]
		behind := len(c.pouredBehind(at.End))
		switch {
		case other > 0 && behind >= leastAnew:
		case c.toldBehind(before, at.End, max(1, c.amounts(first, i))) && behind >= leastAnew && !c.denied(at.End):
		case first == 0 && c.nameless(first, i) && startsAmount(&c.clauses[end+1]):
		default:
			continue
		}
		for at.End < len(c.text) && (c.text[at.End] == '.' || c.text[at.End] == ',' || c.text[at.End] == '!' || c.text[at.End] == '-') {
			at.End++
		}
		edits = append(edits, edit{at, ""})
		notes = append(notes, "“"+c.said(at)+"” is taken back, and what is told behind it counts")
	}
	return edits, notes
}

// leastAnew is the fewest ingredients of a list that stands in place of what is taken back.
const leastAnew = 2

// ofAnother returns behind which clause the words end that begin at clause i and say that what stands before
// them is of another drink; 0 if they do not say so.
func (c *corrector) ofAnother(i int) int {
	for end := i + 1; end <= min(len(c.clauses), i+2); end++ {
		if c.clauses[end-1].before == "\n" && end-1 > i {
			break
		}
		if otherSheet.MatchString(c.text[c.clauses[i].start():c.clauses[end-1].end()]) {
			return end
		}
	}
	return 0
}

// firstPour is the first clause that states an amount before clause i, behind the title that a colon ends;
// −1 if none does.
func (c *corrector) firstPour(i int) int {
	for k := range i {
		if len(amountsIn(c.clauses[k].toks)) > 0 || c.numbered(k) {
			if k > 0 && c.clauses[k].before != ":" && c.clauses[k].before != "\n" { // its name may stand before it: "gin, two"
				return k - 1
			}
			return k
		}
	}
	return -1
}

// numbered reports whether a clause begins with a number in words.
func (c *corrector) numbered(k int) bool {
	for _, t := range c.clauses[k].toks {
		if token.NumberWords[t.Text] > 0 || token.FractionWords[t.Text] > 0 {
			return true
		}
	}
	return false
}

// amounts is how many amounts the clauses from one to another state.
func (c *corrector) amounts(from, to int) (n int) {
	for k := from; k < to; k++ {
		n += len(amountsIn(c.clauses[k].toks))
	}
	return n
}

// nameless reports whether the clauses from one to another state amounts of nothing: "two fingers".
func (c *corrector) nameless(from, to int) bool {
	for k := from; k < to; k++ {
		for _, t := range c.clauses[k].toks {
			if t.Kind == token.Word && !measureless.Has(t.Text) && token.NumberWords[t.Text] == 0 && token.FractionWords[t.Text] == 0 && !entry.IsUnit(&t) {
				return false
			}
		}
	}
	return true
}

// startsAmount reports whether a clause begins with an amount.
func startsAmount(cl *clause) bool {
	all := amountsIn(cl.toks)
	return len(all) > 0 && all[0].from == 0 && all[0].to < len(cl.toks)
}

// denied reports whether the text behind a byte takes something back once more.
func (c *corrector) denied(from int) bool {
	for i := range c.clauses {
		if c.clauses[i].start() < from {
			continue
		}
		if _, armed, _ := withoutLeads(c.clauses[i].toks); armed {
			return true
		}
	}
	return false
}
