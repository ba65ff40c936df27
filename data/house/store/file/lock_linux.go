package file

import (
	"errors"
	"os"
	"syscall"

	"counterpour/data/house"
)

// LockItself locks the house's own file. The lock file is found by name, so a house that
// was renamed while in use needs this lock too: its WAL has the old name. Keep the
// returned file open until the engine has closed the house. On Linux this lock (flock)
// and the engine's (fcntl) do not affect each other; on other systems they do.
func LockItself(path string) (*os.File, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	switch {
	case errors.Is(err, syscall.EWOULDBLOCK):
		f.Close()
		return nil, &house.Error{Kind: house.ErrBusy, Op: "open", Key: path, Message: "another process is using this house under another name, with its last changes in a log there; close it there first"}
	case errors.Is(err, syscall.ENOLCK), errors.Is(err, syscall.EOPNOTSUPP), err == nil:
		return f, nil // a file system without flock: only the lock file protects
	}
	f.Close()
	return nil, err
}
