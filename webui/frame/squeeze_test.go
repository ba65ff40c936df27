package frame

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Only comments and margins go; what stands beside code, and what others wrote, stays.
func TestSqueezed(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"a.css", "/* One\n   two. */\na { b: c; }\n\n@media x {\n  d { e: f; } /* why */\n}\n", "a { b: c; }\n@media x {\nd { e: f; }\n}\n"},
		{"a.js", "// What it does.\n\"use strict\";\n  // Why.\n  const at = \"http://x\"; // beside\n\n\nrun(at);\n", "\"use strict\";\n  const at = \"http://x\"; // beside\nrun(at);\n"},
		{"vendor/a.js", "// licence\nrun();\n", "// licence\nrun();\n"},
		{"a.svg", "<svg>  /* */</svg>", "<svg>  /* */</svg>"},
	} {
		assert.Equal(t, c.want, string(squeezed(c.name, []byte(c.body))), c.name)
	}
}
