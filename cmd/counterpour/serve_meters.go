package main

import (
	"github.com/prometheus/client_golang/prometheus"

	"counterpour/api/service"
	"counterpour/webui/access"
)

// metersOf returns the meters of a venue: how old its data may be, the listeners, and
// what the guard, if any, delayed or refused.
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
