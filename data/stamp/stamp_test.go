package stamp

import (
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheStampIsReadWhole(t *testing.T) {
	setting := func(key, value string) debug.BuildSetting { return debug.BuildSetting{Key: key, Value: value} }
	for _, c := range []struct {
		name string
		info debug.BuildInfo
		want Build
		says string
	}{
		{"installed", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v1.4.0"}},
			Build{Version: "v1.4.0", Go: "go1.26.8"}, "Counterpour v1.4.0"},
		{"built in the repository", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"}, Settings: []debug.BuildSetting{
			setting("vcs.revision", "0f4a0f4a0f4a0f4a"), setting("vcs.time", "2026-01-02T03:04:05Z"), setting("vcs.modified", "true")}},
			Build{Version: "dev", Go: "go1.26.8", Revision: "0f4a0f4a0f4a0f4a", Time: "2026-01-02T03:04:05Z", Changed: true}, "Counterpour dev 0f4a0f4a0f4a, with changes"},
	} {
		b := of(&c.info, Build{Version: "dev"})
		assert.Equal(t, c.want, b, c.name)
		assert.Equal(t, c.says, b.String(), c.name)
	}
	assert.Equal(t, runtime.Version(), Read().Go)
}
