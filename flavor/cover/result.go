package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/sense"
)

// Cover is one way to pour the drink without what is missing.
type Cover struct {
	Parts []flavor.Pour
	// For is what each part stands for, of what had to go.
	For []*flavor.Profile
	// Without is what had to go and nothing stands for: the drink is poured without it.
	Without  []*flavor.Profile
	Changes  []balance.Change // other pours that move
	Spec     flavor.Spec
	Distance float64 // just-noticeable differences between the two finished drinks
	// Beside is the same without the alcohol that the guest must not have, 0 where that
	// is not in question.
	Beside float64
	Notice sense.Notice
	Score  float64
	// Gone is what led the missing ingredients and is not in the glass any more.
	Gone         []sense.Lost
	Lost, Gained []flavor.AromaFamily
	ABV          float64 // % vol, finished
	ABVChange    float64 // % vol, finished
	VolumeChange float64 // mL, finished
	Marks        []flavor.AllergenMark
	NewAllergens []flavor.Allergen
	Read         []*flavor.Profile // whose labels must clear it for the guest; none for a safe cover
	ReadFor      []string          // what each of those labels must say, see [guest.Guest.Cleared]
	Ask          []string          // what to ask the guest before it is poured, see [flavor.Spec.Ask]
	Also         []Cover           // covers that come to the same glass, the best first
	Text         string
	Custom       bool  // the trade, or the house, pours it in place of what went
	Ahead        Ahead // why it ranks above a nearer one of its list

	// Keeps is true if it keeps the drink, the alcohol apart that the guest must not have:
	// it lies within [NearJND], hardly further and is what every bar pours, or is
	// poured by custom, not much further, and has lost nothing that led.
	Keeps bool

	// OtherSpirit is true if a spirit of another class stands for what the drink is made on: guests
	// order by that, and are told, however near the glass.
	OtherSpirit bool

	// Called is the name of the proven drink that it makes, where another bottle makes one of this;
	// "" if it makes none, or one without a name.
	Called string

	// Rank is what covers of a drink are listed by, the least first, in just-noticeable
	// steps: the distance, and what the parts must earn.
	Rank float64
}

// Result is the covers found, the best first.
type Result struct {
	ScoreBefore float64
	// Removed are the pours that had to go: what is missing, and what the guest
	// must not have.
	Removed []*flavor.Profile
	// Unstated are those of Removed that are not missing and whose label may clear them
	// for the guest: they may carry what the guest avoids, or nobody has stated it.
	Unstated    []*flavor.Profile
	UnstatedFor []string // what each of those labels must say, see [guest.Guest.Cleared]
	Covers      []Cover
	// IfLabelClears are covers that hold something which may carry what the guest avoids,
	// or of which nobody has stated it. They are safe only if the labels in Read say so. One
	// without parts leaves out what went.
	IfLabelClears []Cover
	// LabelFirst is true if the first of IfLabelClears would rank before every cover: its labels
	// are what to read first.
	LabelFirst bool
	// LabelsLead is true if IfLabelClears are what to pour first, once the labels are read: no cover
	// that is safe keeps the drink, or each of them does without more than ran out, where a label
	// of what the drink pours anyway would spare that.
	LabelsLead bool
	// Unbalanced is true if no cover keeps the drink in balance, and those
	// listed do not.
	Unbalanced bool
	// LeftOut is the drink with nothing poured instead; nil unless that keeps it
	// within [NearJND], or is in balance, within [LastJND], and no cover is nearer or
	// ranks before it. Where nothing covers a foam or a milk it may be another drink
	// altogether, in balance; and so may a long drink without its spirit, for a guest who
	// drinks no alcohol.
	LeftOut *Cover
	// LeftOutBest is true if that is in balance, or a long drink, and does better than every cover.
	LeftOutBest bool
	Near        bool // some cover keeps the drink, or leaving out what went does
	Proven      bool // no better cover is possible; false if time or effort ran out

	strayed, labels int // how far its covers, and those by label, are from being like what went, see [listing.List]
}

// hopeless reports whether nothing covers what went but what is nothing like it, and another drink.
func (r *Result) hopeless() bool {
	return r.empty() || r.LeftOut == nil && min(r.strayed, r.labels) == listing.StrayedAll && !slices.ContainsFunc(r.Covers, Cover.worthPouring)
}

// empty reports whether nothing at all covers what went.
func (r *Result) empty() bool {
	return len(r.Covers) == 0 && len(r.IfLabelClears) == 0 && r.LeftOut == nil
}

// worthPouring reports whether a cover has a place beside others that are more like what went,
// though a label must be read for those: the trade pours it, or it keeps the drink and what led.
func (c Cover) worthPouring() bool { return c.Custom || c.Keeps && len(c.Gone) == 0 }
