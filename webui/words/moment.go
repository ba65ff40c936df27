package words

import (
	"time"

	"counterpour/webui/say"
)

// Moment formats a time, on every page in UTC.
func Moment(t time.Time) string { return t.UTC().Format("2 Jan 2006, 15:04") + " UTC" }

// Day formats the date of a time, in UTC.
func Day(t time.Time) string { return t.UTC().Format("2 Jan 2006") }

// Ago says how much time has passed, as people say it: in minutes up to an hour and a half,
// then in hours up to two days, then in days.
func Ago(d time.Duration) string {
	const short, long = 90 * time.Minute, 48 * time.Hour
	switch {
	case d < time.Minute:
		return say.It("words.under-a-minute")
	case d < short:
		return say.It("words.minutes", "N", int(d.Minutes()))
	case d < long:
		return say.It("words.hours", "N", int(d.Round(time.Hour).Hours()))
	}
	return say.It("words.days", "N", int(d.Hours()/24))
}
