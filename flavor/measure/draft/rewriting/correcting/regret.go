package correcting

// regretful are what is said behind an amount that counts in place of one above, and nothing else: "lime 20, sorry".
var regretful = phrases("i mean\ni meant\nsorry\noops\nsoz\nsry\nwhoops\nmy bad\nmy mistake\nsorry my bad\noops sorry")

// regrets reports whether the line of clause i is that clause alone with such words behind it.
func (c *corrector) regrets(i int) bool {
	if i+1 >= len(c.clauses) {
		return false
	}
	cl, next := &c.clauses[i], &c.clauses[i+1]
	return cl.before == "\n" && cl.after != "\n" && next.after == "\n" && is(next.toks, regretful)
}
