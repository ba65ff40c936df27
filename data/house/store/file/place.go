// Package file is about the file of a house on its disk, whatever is in it: that one
// program has it, under one name and in its place, and that it is copied and moved whole.
package file

import (
	"fmt"
	"os"
	"path/filepath"

	"counterpour/data/house"
)

// private is the mode of a house, its log, its lock and its backups: they hold
// who did what, and are their owner's.
const private = 0o600

// MakePrivate makes an empty file for the engine to fill. The engine gives its
// log the same mode.
func MakePrivate(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, private)
	if err != nil {
		return err
	}
	return f.Close()
}

// RealPath follows symbolic links, so that one file has one lock whichever way
// leads to it.
func RealPath(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return path
}

// OneName refuses a file that has several names (hard links). Lock and log go
// by name, so that each name would have its own, and the two would diverge.
func OneName(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return nil // a new house; whatever else is wrong, opening it tells
	}
	if n := names(info); n > 1 {
		return &house.Error{Kind: house.ErrInvalid, Op: "open", Key: path,
			Message: fmt.Sprintf("the file has %d names (hard links), and its log is found by the name; remove the other names, or make a copy with house backup", n)}
	}
	return nil
}

// Kept is a file as it was when the house was opened.
type Kept struct {
	path string
	info os.FileInfo
}

// KeptFiles notes which files a house is kept in: its own and its log.
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

// InPlace reports whether files are still the ones under their names. A file
// that was removed or replaced stays writable for whoever has it open, and
// everything in it is lost once it is closed. The files are not opened: closing
// one would drop the engine's locks on it.
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

// Exists reports whether there is anything at a path.
func Exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
