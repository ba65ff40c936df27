//go:build unix

package file

import (
	"os"
	"syscall"
)

// tryLock locks an open file; it returns false if another process holds the lock. The
// system releases the lock when the process ends, however it ends.
func tryLock(f *os.File) (bool, error) {
	err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if err == syscall.EWOULDBLOCK {
		return false, nil
	}
	return err == nil, err
}

// SyncDir makes new file names in a folder durable.
func SyncDir(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}

// names returns the number of hard links of a file.
func names(info os.FileInfo) int {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return 1
}
