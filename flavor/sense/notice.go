package sense

import "math"

// Notice says whether a guest notices a difference.
type Notice string

// What a guest does.
const (
	WontNotice Notice = "won't"
	MayNotice  Notice = "may"
	WillNotice Notice = "will"
)

// Steps at which the verdict changes.
const (
	MayFrom  = 1.0
	WillFrom = 3.0
)

// NoticeOf tells whether a guest will notice: under one step they won't, up to
// three they may, above that they will. Losing what led the drink is noticed at
// any distance: then they at least may. A distance that is not a number counts
// as far.
func NoticeOf(steps float64, lostLead bool) Notice {
	switch {
	case math.IsNaN(steps) || steps > WillFrom:
		return WillNotice
	case steps >= MayFrom || lostLead:
		return MayNotice
	}
	return WontNotice
}

// SameDrink reports whether a drink may be called the same: a guest won't notice.
func SameDrink(steps float64, lostLead bool) bool { return NoticeOf(steps, lostLead) == WontNotice }
