package joining

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
)

// Joiner finds the entries of lines. It keeps the memory that it needs for one line for the
// next, so that what it returns holds until it is called again.
type Joiner struct {
	Text    string // in which the tokens stand
	cut     []Piece
	slashes int // that part the entries of the line
}

// Entries are the entries of a line, each name of a list with its amount.
func (j *Joiner) Entries(toks []token.Token) []Piece { return j.Spread(j.Gathered(toks)) }

// Gathered are the entries of a line, the amount of a list once.
func (j *Joiner) Gathered(toks []token.Token) []Piece { return j.gather(j.pieces(toks)) }

// pieces parts the tokens of a line where entries may be parted.
func (j *Joiner) pieces(toks []token.Token) []Piece {
	out := j.cut[:0]
	depth, from, sep := 0, 0, ""
	add := func(to int, next string) {
		if to > from {
			out = append(out, Piece{Toks: toks[from:to], Sep: sep})
			sep = next
		} else if sep == "" || next == ";" || next == ">" {
			sep = next
		}
	}
	for i := range toks {
		t := &toks[i]
		switch {
		case t.Is("("):
			depth++
		case t.Is(")"):
			depth = max(0, depth-1)
		}
		if i == 0 || i < from || depth > 0 && !(depth == 1 && t.Is("(")) {
			continue
		}
		if s, drop := parting.Separator(toks, i, from); s != "" {
			add(i, s)
			from = i + drop
		}
	}
	add(len(toks), "")
	j.cut = out
	j.slashes = 0
	for i := range out {
		if out[i].Sep == "/" {
			j.slashes++
		}
	}
	return out
}

// gather joins pieces that make one entry: a name and its amount, an amount in
// two units, a name and what qualifies it.
func (j *Joiner) gather(in []Piece) []Piece {
	out := in[:0] // in the memory of what was seen
	for i := range in {
		out = append(out, in[i])
		next := &out[len(out)-1]
		next.Pour = entry.Read(j.Text, next.Toks)
		if len(out) == 1 {
			continue
		}
		if i+1 < len(in) && next.Listed() && (in[i+1].Sep == "-" || in[i+1].Sep == ":") && entry.Read(j.Text, in[i+1].Toks).Shape == entry.ShapeAmount {
			continue // "gin - 45 ml, saline - 4 drops"
		}
		last := &out[len(out)-2]
		if len(in) == 2 && headed(last, next) {
			*last = both(j.Text, last, next)
			out = out[:len(out)-1]
			continue
		}
		p := pair{text: j.Text, a: last, b: next, alone: len(in) == 2, slashes: j.slashes}
		if joined, ok := p.joined(); ok {
			*last = joined
			out = out[:len(out)-1]
		}
	}
	j.cut = out
	return out
}
