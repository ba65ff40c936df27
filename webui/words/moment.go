package words

import "time"

// Moment is a time as the pages tell it, on every page in the same zone.
func Moment(t time.Time) string { return t.UTC().Format("2 Jan 2006, 15:04") + " UTC" }

// Day is the day of a time, in the zone of [Moment].
func Day(t time.Time) string { return t.UTC().Format("2 Jan 2006") }
