// Package stamp reads the build information that the Go tool stores in the binary.
package stamp

import "runtime/debug"

// Build is what the program was built from.
type Build struct {
	Version  string `json:"version"`            // of the module; "dev" if unknown
	Go       string `json:"go"`                 // Go release
	Revision string `json:"revision,omitempty"` // VCS revision, if built in the repository
	Time     string `json:"time,omitempty"`     // of that revision, RFC 3339
	Changed  bool   `json:"changed,omitempty"`  // the working tree had uncommitted changes
}

// Read returns the build information of the running program.
func Read() Build {
	b := Build{Version: "dev"}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	return of(info, b)
}

// of fills in what info contains.
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

// revisionShown is how many characters of a revision are shown.
const revisionShown = 12

// String returns the build in one line.
func (b Build) String() string {
	text := "Counterpour " + b.Version
	if b.Version == "dev" && b.Revision != "" { // without a version, the revision says which source it is
		text += " " + b.Revision[:min(len(b.Revision), revisionShown)]
		if b.Changed {
			text += ", with changes"
		}
	}
	return text
}
