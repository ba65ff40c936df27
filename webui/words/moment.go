package words

import "time"

// Moment formats a time, on every page in UTC.
func Moment(t time.Time) string { return t.UTC().Format("2 Jan 2006, 15:04") + " UTC" }

// Day formats the date of a time, in UTC.
func Day(t time.Time) string { return t.UTC().Format("2 Jan 2006") }
