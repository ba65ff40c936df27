package api

import (
	"net/http"
	"strconv"
	"time"

	"counterpour/api/admission"
	"counterpour/api/journal"
	"counterpour/api/service"

	"github.com/gin-gonic/gin"
	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"
)

const metricsPath = "/metrics"

// meters count and time requests, in a registry of their own.
type meters struct {
	registry *prometheus.Registry
	requests *prometheus.CounterVec
	seconds  *prometheus.HistogramVec
	now      prometheus.Gauge
}

func newMeters(house func() *service.Snapshot, more []prometheus.Collector) *meters {
	m := &meters{
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

// searchMeters tell how crowded the searches are.
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

func (m *meters) handler() http.Handler {
	return promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{})
}

// measure counts a request under the pattern of its route, so that no address
// that a stranger makes up becomes a series of its own.
func (s *Server) measure(c *gin.Context) {
	start := time.Now()
	s.meters.now.Inc()
	defer func() {
		s.meters.now.Dec()
		journal.SetRoute(c.Request.Context(), c.FullPath())
		method, route := methodLabel(c.Request.Method), journal.RouteOf(c.Request.Context())
		if route == "" {
			route = c.FullPath() // nobody keeps a journal
		}
		if route == "" {
			route = "other"
		}
		s.meters.requests.WithLabelValues(method, route, strconv.Itoa(c.Writer.Status())).Inc()
		s.meters.seconds.WithLabelValues(method, route).Observe(time.Since(start).Seconds())
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
