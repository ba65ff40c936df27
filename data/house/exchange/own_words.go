package exchange

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// wordsApart separates the house's own words for one ingredient in a cell.
const wordsApart = "; "

// wordsOf assigns the house's own words to bottles: each word goes to the first bottle of
// its ingredient. left are the words of ingredients without a bottle, and words that
// contain the separator; each gets a row of its own.
func wordsOf(bottles []house.Bottle, names []house.Name) (beside map[int][]string, left []house.Name) {
	first := map[string]int{}
	for i := len(bottles) - 1; i >= 0; i-- {
		first[bottles[i].Ingredient] = i
	}
	beside = map[int][]string{}
	for _, n := range names {
		if at, there := first[n.Ingredient]; there && !strings.Contains(n.Written, strings.TrimSpace(wordsApart)) {
			beside[at] = append(beside[at], n.Written)
			continue
		}
		left = append(left, n)
	}
	return beside, left
}

// ownWords reads the words of a row: a row without a bottle holds one word, a row with a
// bottle the words for its ingredient. alone is true for a row without a bottle.
func (s *sheetReader) ownWords(r *SheetRow) (alone bool) {
	cell := strings.TrimSpace(r.Cells[column.Words])
	if cell == "" {
		return false
	}
	if strings.TrimSpace(r.Cells[column.Name]+r.Cells[column.ID]) != "" {
		for word := range strings.SplitSeq(cell, strings.TrimSpace(wordsApart)) {
			if word = strings.TrimSpace(word); word != "" && !slices.Contains(r.Words, word) {
				r.Words = append(r.Words, word)
			}
		}
		return false
	}
	r.Words, r.LeftOut = []string{cell}, wordsAlone
	if !s.kinds.Knows() {
		r.Bottle.Ingredient = strings.TrimSpace(r.Cells[column.Kind])
		return true
	}
	if p, _, ok := s.kinds.Named(r.Cells[column.Kind]); ok {
		r.Bottle.Ingredient = p.ID
	}
	return true
}

// wordsAlone marks a row that holds a word of the house and no bottle.
const wordsAlone = "a word of the house"

// addWords adds the words of a row. A word that means another ingredient already is bad.
func (s *Sheet) addWords(out *Reading, r *SheetRow) {
	for _, word := range r.Words {
		id := house.IDOf(house.KindName, flavor.NormaliseName(word))
		if s.kinds != nil {
			if p, _, ok := s.kinds.Named(word); ok && p.ID != r.Bottle.Ingredient {
				out.spoil(r.row)
				out.bad(r.Number, word, fmt.Errorf("%q means %s already, and cannot mean another too", word, p.Name))
				continue
			}
		}
		if s.kinds != nil {
			if p, _, ok := s.kinds.Named(r.Bottle.Ingredient); ok && naming.Loses(word, p) != "" {
				out.spoil(r.row)
				out.bad(r.Number, word, fmt.Errorf("%q says that it holds %s, and %s is not known to carry that; keep it as a bottle of its own", word, naming.Loses(word, p), p.Name))
				continue
			}
		}
		if r.Bottle.Ingredient == "" || id == "" {
			out.spoil(r.row)
			out.bad(r.Number, word, fmt.Errorf("what %q means is not known; write its ingredient, such as London dry gin", word))
			continue
		}
		if ref := (house.Ref{Kind: house.KindName, ID: id}); !out.seen[ref] {
			out.add(r.Number, house.Name{ID: id, Written: word, Ingredient: r.Bottle.Ingredient})
		}
	}
}
