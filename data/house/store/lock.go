package store

import (
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"counterpour/data/house"
)

// lock is the lock file beside a house. It is held for as long as the house is
// open and stays there afterwards, empty of meaning.
type lock struct{ f *os.File }

// lockHouse takes the lock of the house at path, or says who holds it.
func lockHouse(op, path string) (*lock, error) {
	f, err := os.OpenFile(path+".lock", os.O_RDWR|os.O_CREATE, private)
	if err != nil {
		return nil, wrap(err, classifyFile, op, path)
	}
	ok, err := tryLock(f)
	if err != nil {
		f.Close()
		return nil, wrap(err, classifyFile, op, path)
	}
	if !ok {
		defer f.Close()
		return nil, fail(house.ErrBusy, op, path, "%s is using this house; close it there, or use another file", holder(f))
	}
	_ = f.Truncate(0)
	_, _ = f.WriteAt([]byte(strconv.Itoa(os.Getpid())+"\n"), 0) // for people; the lock holds without it
	return &lock{f}, nil
}

func holder(f *os.File) string {
	text, _ := io.ReadAll(io.LimitReader(f, 20))
	pid, err := strconv.Atoi(strings.TrimSpace(string(text)))
	if err != nil {
		return "another process"
	}
	return fmt.Sprintf("another process, number %d,", pid)
}

func (l *lock) release() { l.f.Close() }
