package file

import (
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"counterpour/data/house"
)

// Lock is the lock file beside a house. It is locked while the house is open. The file
// itself stays afterwards and means nothing.
type Lock struct{ f *os.File }

// Take locks the house at path. If another process holds the lock, it fails with
// [house.ErrBusy] and names the process.
func Take(op, path string) (*Lock, error) {
	f, err := os.OpenFile(path+".lock", os.O_RDWR|os.O_CREATE, private)
	if err != nil {
		return nil, err
	}
	ok, err := tryLock(f)
	if err != nil {
		f.Close()
		return nil, err
	}
	if !ok {
		defer f.Close()
		return nil, &house.Error{Kind: house.ErrBusy, Op: op, Key: path, Message: holder(f) + " is using this house; close it there, or use another file"}
	}
	_ = f.Truncate(0)
	_, _ = f.WriteAt([]byte(strconv.Itoa(os.Getpid())+"\n"), 0) // for people only; the lock does not depend on it
	return &Lock{f}, nil
}

func holder(f *os.File) string {
	text, _ := io.ReadAll(io.LimitReader(f, 20))
	pid, err := strconv.Atoi(strings.TrimSpace(string(text)))
	if err != nil {
		return "another process"
	}
	return fmt.Sprintf("another process, number %d,", pid)
}

// Release releases the lock.
func (l *Lock) Release() { l.f.Close() }
