package main

import (
	"github.com/prometheus/client_golang/prometheus"

	"counterpour/api/service"
	"counterpour/webui/access"
)

// metersOf measures what only a house at work has: how far behind its store it may
// be, who listens, and what the guard, if there is one, held up.
func metersOf(v *service.Venue, guard *access.Guard) []prometheus.Collector {
	out := []prometheus.Collector{
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "counterpour_store_age_seconds", Help: "Time since the house was last known to match its store."},
			func() float64 { return v.Age().Seconds() }),
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "counterpour_listeners", Help: "Open streams of events."},
			func() float64 { return float64(v.Listeners()) }),
	}
	if guard != nil {
		out = append(out, prometheus.NewCounterFunc(prometheus.CounterOpts{Name: "counterpour_sign_ins_held_up_total", Help: "Sign-ins that were told to wait."},
			func() float64 { return float64(guard.HeldUp()) }))
	}
	return out
}
