// Package metrics counts and times HTTP requests and searches, and serves the result in
// Prometheus format.
package metrics

import (
	"net/http"
	"strconv"
	"time"

	"counterpour/api/accesslog"
	"counterpour/api/admission"
	"counterpour/api/service"

	"github.com/gin-gonic/gin"
	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"
)

// Path is the address of the metrics.
const Path = "/metrics"

// Meters count and time requests. They have a registry of their own.
type Meters struct {
	registry *prometheus.Registry
	requests *prometheus.CounterVec
	seconds  *prometheus.HistogramVec
	now      prometheus.Gauge
}

// New returns the meters of a server. house returns the current snapshot and is called at
// every scrape; more are further collectors to serve.
func New(house func() *service.Snapshot, more []prometheus.Collector) *Meters {
	m := &Meters{
		registry: prometheus.NewRegistry(),
		requests: prometheus.NewCounterVec(prometheus.CounterOpts{Name: "counterpour_http_requests_total",
			Help: "Requests answered, by method, route and status."}, []string{"method", "route", "status"}),
		seconds: prometheus.NewHistogramVec(prometheus.HistogramOpts{Name: "counterpour_http_request_duration_seconds",
			Help:    "Time from the header read to the answer written, by method and route.",
			Buckets: []float64{.0005, .001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 2.5, 5, 10}}, []string{"method", "route"}),
		now: prometheus.NewGauge(prometheus.GaugeOpts{Name: "counterpour_http_requests_in_flight", Help: "Requests being answered."}),
	}
	ingredients := prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "counterpour_ingredients", Help: "Ingredients in the index."},
		func() float64 { return float64(house().Index.Len()) })
	m.registry.MustRegister(searchMeters(house)...)
	m.registry.MustRegister(m.requests, m.seconds, m.now, ingredients, collectors.NewGoCollector(),
		collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	m.registry.MustRegister(more...)
	return m
}

// searchMeters report how many searches run, wait and were refused.
func searchMeters(house func() *service.Snapshot) []prometheus.Collector {
	count := func(of func(*admission.Pool) int64) func() float64 {
		return func() float64 { return float64(of(house().Searches)) }
	}
	return []prometheus.Collector{
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "counterpour_searches_in_flight", Help: "Searches for covers, riffs and the like under way."},
			count((*admission.Pool).Running)),
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "counterpour_searches_queued", Help: "Searches that wait for their turn."},
			count((*admission.Pool).Waiting)),
		prometheus.NewCounterFunc(prometheus.CounterOpts{Name: "counterpour_searches_refused_total", Help: "Searches that were refused since too many waited."},
			count((*admission.Pool).Refused)),
	}
}

// Handler serves the metrics.
func (m *Meters) Handler() http.Handler {
	return promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{})
}

// Measure is a middleware that counts and times a request under the pattern of its route.
// It never uses the path, since clients could create any number of time series with it.
func (m *Meters) Measure(c *gin.Context) {
	start := time.Now()
	m.now.Inc()
	defer func() {
		m.now.Dec()
		accesslog.SetRoute(c.Request.Context(), c.FullPath())
		method, route := methodLabel(c.Request.Method), accesslog.RouteOf(c.Request.Context())
		if route == "" {
			route = c.FullPath() // no accesslog.Keep in front
		}
		if route == "" {
			route = "other"
		}
		m.requests.WithLabelValues(method, route, strconv.Itoa(c.Writer.Status())).Inc()
		m.seconds.WithLabelValues(method, route).Observe(time.Since(start).Seconds())
	}()
	c.Next()
}

func methodLabel(method string) string {
	switch method {
	case http.MethodGet, http.MethodPost, http.MethodPut, http.MethodPatch, http.MethodDelete, http.MethodOptions:
		return method
	}
	return "other"
}
