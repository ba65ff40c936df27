package words

import "time"

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
		return "less than a minute"
	case d < short:
		return Count(int(d.Minutes()), "minute", "minutes")
	case d < long:
		return Count(int(d.Round(time.Hour).Hours()), "hour", "hours")
	}
	return Count(int(d.Hours()/24), "day", "days")
}
