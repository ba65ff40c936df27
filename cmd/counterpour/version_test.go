package main

import (
	"encoding/json"
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestVersionSaysTheBuild(t *testing.T) {
	code, out, errOut := try(t, "", "version")
	require.Zero(t, code, errOut)
	assert.Contains(t, out, "Counterpour ")
	assert.Contains(t, out, runtime.Version())

	code, out, errOut = try(t, "", "version", "--json")
	require.Zero(t, code, errOut)
	var b build
	require.NoError(t, json.Unmarshal([]byte(out), &b))
	assert.Equal(t, thisBuild(), b)
}

func TestTheStampIsReadWhole(t *testing.T) {
	setting := func(key, value string) debug.BuildSetting { return debug.BuildSetting{Key: key, Value: value} }
	for _, c := range []struct {
		name string
		info debug.BuildInfo
		want build
	}{
		{"installed", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v1.4.0"}},
			build{Version: "v1.4.0", Go: "go1.26.8"}},
		{"built in the repository", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"}, Settings: []debug.BuildSetting{
			setting("vcs.revision", "0f4a"), setting("vcs.time", "2026-01-02T03:04:05Z"), setting("vcs.modified", "true")}},
			build{Version: "dev", Go: "go1.26.8", Revision: "0f4a", Time: "2026-01-02T03:04:05Z", Changed: true}},
	} {
		assert.Equal(t, c.want, stampOf(&c.info, build{Version: "dev"}), c.name)
	}
}
