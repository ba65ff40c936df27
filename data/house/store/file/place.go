// Package file handles the file of a house on disk: locks it, checks that it has one name
// and is still in its place, copies and moves it.
package file

import (
	"fmt"
	"os"
	"path/filepath"

	"counterpour/data/house"
)

// private is the mode of a house, its WAL, its lock file and its backups. They contain
// who did what, so only the owner may read them.
const private = 0o600

// MakePrivate creates an empty file for the engine to fill. The engine gives the WAL the
// same mode.
func MakePrivate(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, private)
	if err != nil {
		return err
	}
	return f.Close()
}

// RealPath resolves symbolic links, so that a file has the same lock whatever path leads
// to it.
func RealPath(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return path
}

// OneName refuses a file with several hard links. Lock file and WAL are found by name, so
// each name would have its own, and the data would diverge.
func OneName(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return nil // new house, or an error that opening it will report
	}
	if n := names(info); n > 1 {
		return &house.Error{Kind: house.ErrInvalid, Op: "open", Key: path,
			Message: fmt.Sprintf("the file has %d names (hard links), and its log is found by the name; remove the other names, or make a copy with house backup", n)}
	}
	return nil
}

// Kept identifies a file as it was when the house was opened.
type Kept struct {
	path string
	info os.FileInfo
}

// KeptFiles returns the identity of the house's file and of its WAL.
func KeptFiles(path string) (files []Kept, err error) {
	for _, p := range []string{path, path + "-wal"} {
		info, err := os.Stat(p)
		if err != nil {
			return nil, err
		}
		files = append(files, Kept{p, info})
	}
	return files, nil
}

// InPlace returns an error unless the files are still the ones at their paths. A file
// that was removed or replaced stays writable for the process that has it open, but its
// content is lost when it is closed. InPlace does not open the files: closing one would
// release the engine's locks.
func InPlace(files []Kept) error {
	for _, f := range files {
		info, err := os.Stat(f.path)
		if err != nil || !os.SameFile(info, f.info) {
			return &house.Error{Kind: house.ErrUnavailable, Op: "use", Key: f.path, Message: fmt.Sprintf(
				"the file of the house was removed or replaced while it was in use (%s); no change is kept any more: stop the program, put the file back or restore a backup, and start again", filepath.Base(f.path))}
		}
	}
	return nil
}

// Exists reports whether there is a file at a path.
func Exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
