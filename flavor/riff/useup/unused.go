package useup

import (
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
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

// Unused is a bottle that no draft moves.
type Unused struct {
	Profile   *flavor.Profile
	Why       Why
	Objection string // of the guest, see [guest.Guest.Objection]; empty for none
}

// String says the reason in words that go on from the bottle's name.
func (u *Unused) String() string {
	switch u.Why {
	case WhyGuest:
		return wording.NotForGuest(u.Objection)
	case WhyNoPlace:
		return wording.NoPlace
	case WhyOff:
		return wording.NoneBalanced
	case WhyLimit:
		return wording.BeyondLimit
	case WhyTime:
		return wording.NotReached
	}
	return wording.OthersFirst
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
