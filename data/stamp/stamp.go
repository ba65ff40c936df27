// Package stamp says what the program was built from, as the Go tool stamped it into
// the binary.
package stamp

import "runtime/debug"

// Build is what the program was built from.
type Build struct {
	Version  string `json:"version"`            // of the module; "dev" where none is known
	Go       string `json:"go"`                 // the release of Go
	Revision string `json:"revision,omitempty"` // of the source, where it was built in its repository
	Time     string `json:"time,omitempty"`     // of that revision, RFC 3339
	Changed  bool   `json:"changed,omitempty"`  // the source held changes beyond the revision
}

// Read reads the stamp of the program that runs.
func Read() Build {
	b := Build{Version: "dev"}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	return of(info, b)
}

// of fills in what info knows.
func of(info *debug.BuildInfo, b Build) Build {
	b.Go = info.GoVersion
	if v := info.Main.Version; v != "" && v != "(devel)" {
		b.Version = v
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Revision = s.Value
		case "vcs.time":
			b.Time = s.Value
		case "vcs.modified":
			b.Changed = s.Value == "true"
		}
	}
	return b
}

// revisionShown is how much of a revision tells it apart.
const revisionShown = 12

// String is the build in one line.
func (b Build) String() string {
	text := "Counterpour " + b.Version
	if b.Version == "dev" && b.Revision != "" { // a version that is none says which source
		text += " " + b.Revision[:min(len(b.Revision), revisionShown)]
		if b.Changed {
			text += ", with changes"
		}
	}
	return text
}
