package main

import (
	"encoding/json"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/stamp"
)

func TestVersionStatesTheBuild(t *testing.T) {
	code, out, errOut := try(t, "", "version")
	require.Zero(t, code, errOut)
	assert.Contains(t, out, "Counterpour ")
	assert.Contains(t, out, runtime.Version())

	code, out, errOut = try(t, "", "version", "--json")
	require.Zero(t, code, errOut)
	var b stamp.Build
	require.NoError(t, json.Unmarshal([]byte(out), &b))
	assert.Equal(t, stamp.Read(), b)
}
