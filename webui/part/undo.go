package part

import (
	"net/url"
	"strconv"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/webui/form"
)

// UndoPath is the path for undoing a write.
const UndoPath = "/undo"

// Undo is a link for undoing the last write.
type Undo struct {
	Mark string // identifies the write
	Back string // path to return to
}

// UndoOf returns the link for undoing a write; nil if nothing was written.
func UndoOf(changes []house.Change, back string) *Undo {
	if len(changes) == 0 {
		return nil
	}
	return &Undo{Mark: MarkOf(changes[0].Ref, changes[0].Version), Back: back}
}

// MarkOf encodes one of a write's changes, which identifies the write.
func MarkOf(ref house.Ref, version int64) string {
	return strings.Join([]string{string(ref.Kind), strconv.FormatInt(version, 10), ref.ID}, " ")
}

// undoable are the kinds of records whose writes pages can undo.
var undoable = map[house.Kind]bool{house.KindBottle: true, house.KindMade: true, house.KindSpec: true, house.KindSettings: true,
	house.KindCover: true, house.KindTriangle: true, house.KindPrice: true}

// ReadMark decodes what [MarkOf] encoded.
func ReadMark(mark string) (service.Written, error) {
	parts := strings.SplitN(mark, " ", 3)
	if len(parts) != 3 || !undoable[house.Kind(parts[0])] {
		return service.Written{}, form.ErrUnreadable
	}
	version, err := strconv.ParseInt(parts[1], 10, 64)
	if err != nil || version < 1 {
		return service.Written{}, form.ErrUnreadable
	}
	return service.Written{Ref: house.Ref{Kind: house.Kind(parts[0]), ID: parts[2]}, Version: version}, nil
}

// UndoIn returns the undo link that a query carries, with the path to return to; nil if
// it carries none.
func UndoIn(asked url.Values, back string) *Undo {
	mark := asked.Get("undo")
	if _, err := ReadMark(mark); err != nil {
		return nil
	}
	return &Undo{mark, back}
}
