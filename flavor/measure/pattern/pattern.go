// Package pattern holds regular expressions that cost nothing until they are needed: they
// are compiled when they are first asked, and most texts that one cannot match are told by
// the letters that the text lacks.
package pattern

import (
	"regexp"
	"regexp/syntax"
	"sync"
)

// Pattern is a regular expression, safe for use by several at a time. Its methods answer as
// those of [regexp.Regexp] do.
type Pattern struct {
	text  string
	once  sync.Once
	exp   *regexp.Regexp
	needs []need
}

// Of returns the pattern of an expression in the syntax of package regexp. One that is wrong
// panics when it is first asked.
func Of(text string) *Pattern { return &Pattern{text: text} }

// String returns the expression.
func (p *Pattern) String() string { return p.text }

// compiled returns the expression, compiled.
func (p *Pattern) compiled() *regexp.Regexp {
	p.once.Do(func() {
		p.exp = regexp.MustCompile(p.text)
		if tree, err := syntax.Parse(p.text, syntax.Perl); err == nil {
			p.needs = needsOf(tree)
		}
	})
	return p.exp
}

// among returns the expression if it may match within text, and nil if it cannot.
func (p *Pattern) among(text string) *regexp.Regexp {
	exp := p.compiled()
	if len(p.needs) == 0 {
		return exp
	}
	var l letters
	if !l.read(text) {
		return exp
	}
	for _, n := range p.needs {
		if !n.metBy(&l) {
			return nil
		}
	}
	return exp
}

// MatchString reports whether the text holds a match.
func (p *Pattern) MatchString(text string) bool {
	exp := p.among(text)
	return exp != nil && exp.MatchString(text)
}

// FindString returns the leftmost match, empty if there is none.
func (p *Pattern) FindString(text string) string {
	if exp := p.among(text); exp != nil {
		return exp.FindString(text)
	}
	return ""
}

// FindStringIndex returns where the leftmost match is, nil if there is none.
func (p *Pattern) FindStringIndex(text string) []int {
	if exp := p.among(text); exp != nil {
		return exp.FindStringIndex(text)
	}
	return nil
}

// FindStringSubmatch returns the leftmost match and its groups, nil if there is none.
func (p *Pattern) FindStringSubmatch(text string) []string {
	if exp := p.among(text); exp != nil {
		return exp.FindStringSubmatch(text)
	}
	return nil
}

// FindStringSubmatchIndex returns where the leftmost match and its groups are, nil if there
// is none.
func (p *Pattern) FindStringSubmatchIndex(text string) []int {
	if exp := p.among(text); exp != nil {
		return exp.FindStringSubmatchIndex(text)
	}
	return nil
}

// FindAllString returns the first n matches, all if n is negative.
func (p *Pattern) FindAllString(text string, n int) []string {
	if exp := p.among(text); exp != nil {
		return exp.FindAllString(text, n)
	}
	return nil
}

// FindAllStringIndex returns where the first n matches are, all if n is negative.
func (p *Pattern) FindAllStringIndex(text string, n int) [][]int {
	if exp := p.among(text); exp != nil {
		return exp.FindAllStringIndex(text, n)
	}
	return nil
}

// FindAllStringSubmatch returns the first n matches and their groups, all if n is negative.
func (p *Pattern) FindAllStringSubmatch(text string, n int) [][]string {
	if exp := p.among(text); exp != nil {
		return exp.FindAllStringSubmatch(text, n)
	}
	return nil
}

// FindAllStringSubmatchIndex returns where the first n matches and their groups are, all if
// n is negative.
func (p *Pattern) FindAllStringSubmatchIndex(text string, n int) [][]int {
	if exp := p.among(text); exp != nil {
		return exp.FindAllStringSubmatchIndex(text, n)
	}
	return nil
}

// ReplaceAllString returns the text with each match replaced, $1 standing for a group.
func (p *Pattern) ReplaceAllString(text, by string) string {
	if exp := p.among(text); exp != nil {
		return exp.ReplaceAllString(text, by)
	}
	return text
}

// Split returns the pieces of the text between the first n-1 matches, between all if n is
// negative.
func (p *Pattern) Split(text string, n int) []string { return p.compiled().Split(text, n) }
