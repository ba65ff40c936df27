package file

import (
	"errors"
	"os"
	"syscall"

	"counterpour/data/house"
)

// LockItself takes the file of a house itself, whatever it is called: one that was
// renamed under a program has another lock file, and its log is left behind. The file
// must be there, and stay open until the engine has closed it. On Linux this lock
// (flock) and the engine's (fcntl) know nothing of each other; elsewhere they do.
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
		return f, nil // a disk without such locks has the lock file
	}
	f.Close()
	return nil, err
}
