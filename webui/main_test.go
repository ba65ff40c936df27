package webui_test

import (
	"testing"

	"counterpour/webui"
	"counterpour/webui/webuitest"
)

func TestMain(m *testing.M) { webuitest.Main(m, webui.New) }
