package wording

// Why a bottle that must move is in no draft, in words that go on from its name.
const (
	NoPlace      = "no proven drink that this stock can pour takes enough of it"
	NoneBalanced = "no draft that moves it is both in balance and poured as bars pour"
	BeyondLimit  = "drafts that move it are in balance, but beyond a limit"
	NotReached   = "time ran out before a draft that moves it was found; ask for fewer bottles at once"
	OthersFirst  = "good drafts move it, but others came first; ask for more drafts"
)

// NotForGuest says that the guest must not have a bottle, with the guest's objection, or that
// a limit rules it out where there is none.
func NotForGuest(objection string) string {
	if objection == "" {
		return "the guest must not have it, or a limit rules it out"
	}
	return "the guest must not have it: it " + objection
}

// NotAtHand says that a pour is not among what may be poured, in words that go on from its name.
const NotAtHand = "is not among what may be poured"

// RanOut says the same of what the house has marked as out.
const RanOut = "the house has marked as out"

// NothingStands adds that nothing that may be poured does the work of such a pour.
const NothingStands = ", and nothing here stands in for it"
