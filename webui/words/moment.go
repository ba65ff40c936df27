package words

import "time"

// Moment is a time as the pages tell it.
func Moment(t time.Time) string { return t.UTC().Format("2 Jan 2006, 15:04") + " UTC" }
