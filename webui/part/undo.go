package part

import (
	"net/url"
	"strconv"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/webui/form"
)

// UndoPath is where a write is taken back.
const UndoPath = "/undo"

// Undo offers to take back what was just written.
type Undo struct {
	Mark string // of the write
	Back string // address to go back to
}

// UndoOf offers to take a write back; nil if nothing was written.
func UndoOf(changes []house.Change, back string) *Undo {
	if len(changes) == 0 {
		return nil
	}
	return &Undo{Mark: MarkOf(changes[0].Ref, changes[0].Version), Back: back}
}

// MarkOf names a write by one of its changes.
func MarkOf(ref house.Ref, version int64) string {
	return strings.Join([]string{string(ref.Kind), strconv.FormatInt(version, 10), ref.ID}, " ")
}

// undoable are the kinds of record that a page takes back.
var undoable = map[house.Kind]bool{house.KindBottle: true, house.KindMade: true, house.KindSpec: true, house.KindSettings: true,
	house.KindCover: true, house.KindTriangle: true}

// ReadMark is the inverse of [MarkOf].
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

// UndoIn is the offer that an address carries, with the address to go back to; nil if
// it carries none.
func UndoIn(asked url.Values, back string) *Undo {
	mark := asked.Get("undo")
	if _, err := ReadMark(mark); err != nil {
		return nil
	}
	return &Undo{mark, back}
}
