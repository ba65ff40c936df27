package file

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock locks an open file; it returns false if another process holds the lock. The
// system releases the lock when the process ends, however it ends. It locks a byte far
// beyond the text, so that other processes can still read who holds the lock.
func tryLock(f *os.File) (bool, error) {
	at := &windows.Overlapped{Offset: 1 << 30}
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, at)
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return false, nil
	}
	return err == nil, err
}

// SyncDir does nothing: Windows cannot sync folders, and NTFS journals file names.
func SyncDir(string) error { return nil }

// names returns 1: os.FileInfo does not contain the number of hard links on Windows.
func names(os.FileInfo) int { return 1 }
