package part

import (
	"strings"

	"counterpour/flavor"
	"counterpour/webui/say"
)

// Serving says how a drink is mixed and served, in what, and with what on top and on the
// rim.
func Serving(s *flavor.Spec) string {
	parts := []string{string(s.Method) + ", " + string(s.Service)}
	for _, more := range []string{s.Glass, s.Garnish} {
		if more != "" {
			parts = append(parts, more)
		}
	}
	if s.Rim != "" {
		parts = append(parts, say.It("part.rim-of", "Rim", s.Rim))
	}
	if off := s.LeaveOff(); off != "" {
		parts = append(parts, off)
	}
	return strings.Join(parts, " · ")
}
