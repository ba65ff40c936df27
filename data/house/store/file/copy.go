package file

import (
	"io"
	"os"
	"path/filepath"
)

// Sync makes the content of a file durable (fsync).
func Sync(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}

// MoveAside moves a house and its WAL, which may hold the latest changes. It moves the
// WAL first, so that a house is never left beside the WAL of another.
func MoveAside(path, aside string) error {
	for _, suffix := range []string{"-wal", "-shm", ""} {
		if !Exists(path + suffix) {
			continue
		}
		if err := os.Rename(path+suffix, aside+suffix); err != nil {
			return err
		}
	}
	return nil
}

// Copy makes a durable copy of a file that only its owner can read.
func Copy(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_RDWR|os.O_CREATE|os.O_TRUNC, private)
	if err != nil {
		return err
	}
	if _, err := io.Copy(out, in); err != nil {
		out.Close()
		return err
	}
	if err := out.Sync(); err != nil {
		out.Close()
		return err
	}
	return out.Close()
}

// WithCopy calls f with a temporary copy of a file, which f may change.
func WithCopy(path string, f func(copy string) error) error {
	dir, err := os.MkdirTemp("", "house")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	to := filepath.Join(dir, "copy.db")
	if err := Copy(path, to); err != nil {
		return err
	}
	return f(to)
}
