package useup

import (
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// Why says why a bottle is in no draft.
type Why string

// The reasons, the nearest to a draft last.
const (
	WhyGuest   Why = "guest"   // the guest must not have it, or a wish rules it out
	WhyNoPlace Why = "place"   // no proven drink has a place for as much as would move it
	WhyOff     Why = "balance" // no draft that moves it comes into balance
	WhyLimit   Why = "limit"   // balanced drafts move it, but too strong, too weak or too dear
	WhyTime    Why = "time"    // time ran out before all drafts that would move it were tried
	WhyCrowded Why = "crowded" // good drafts move it, but others came first
)

// String says the reason in words that go on from the bottle's name.
func (w Why) String() string {
	switch w {
	case WhyGuest:
		return "the guest must not have it, or a limit rules it out"
	case WhyNoPlace:
		return "no proven drink that this stock can pour takes enough of it"
	case WhyOff:
		return "no draft that moves it is both in balance and poured as bars pour"
	case WhyLimit:
		return "drafts that move it are in balance, but beyond a limit"
	case WhyTime:
		return "time ran out before a draft that moves it was found; ask for fewer bottles at once"
	}
	return "good drafts move it, but others came first; ask for more drafts"
}

// Unused is a bottle that no draft moves.
type Unused struct {
	Profile   *flavor.Profile
	Why       Why
	Objection string // of the guest, see [guest.Guest.Objection]; empty for none
}

// String says the reason in words that go on from the bottle's name.
func (u *Unused) String() string {
	if u.Why == WhyGuest && u.Objection != "" {
		return "the guest must not have it: it " + u.Objection
	}
	return u.Why.String()
}

// unpoured says why a bottle is not on the shelf of the request.
func (u *user) unpoured(p *flavor.Profile) Why {
	if !u.work.Limits.Accepts(p) {
		return WhyGuest
	}
	return WhyNoPlace // nobody pours it by itself
}

// leave notes that time ran out for some bottles.
func (u *user) leave(some []*flavor.Profile) {
	for _, p := range some {
		if _, pourable := u.work.Has(p); !pourable {
			u.why[p.ID] = u.unpoured(p)
		} else if u.why[p.ID] != WhyCrowded {
			u.why[p.ID] = WhyTime
		}
	}
}

// note keeps what became of the draft that came nearest to using a bottle.
func (u *user) note(p *flavor.Profile, f station.Fate) {
	switch {
	case f == station.Good:
		u.why[p.ID] = WhyCrowded
	case f == station.Limit && u.why[p.ID] != WhyCrowded:
		u.why[p.ID] = WhyLimit
	case (f == station.Off || f == station.Unfit) && u.why[p.ID] == WhyNoPlace:
		u.why[p.ID] = WhyOff
	}
}
