package drill

import (
	"hash/fnv"
	"strconv"

	"counterpour/flavor"
)

// Mark tells drinks apart in few letters, so that a sitting can remember what it had. Two
// drinks may share one: then one of them waits for another sitting.
type Mark uint16

// MarkOf returns the mark of a drink, which goes by its name.
func MarkOf(s *flavor.Spec) Mark { return markOf(flavor.NormaliseName(s.Name)) }

func markOf(text string) Mark {
	h := fnv.New32a()
	h.Write([]byte(text))
	sum := h.Sum32()
	return Mark(sum ^ sum>>16)
}

// markBase is the base in which marks are written.
const markBase = 36

// String writes a mark; [ParseMark] reads it.
func (m Mark) String() string { return strconv.FormatUint(uint64(m), markBase) }

// ParseMark reads a mark; it is false for what is none.
func ParseMark(text string) (Mark, bool) {
	n, err := strconv.ParseUint(text, markBase, 16)
	return Mark(n), err == nil
}
