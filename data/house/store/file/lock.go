package file

import (
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"counterpour/data/house"
)

// Lock is the lock file beside a house. It is held for as long as the house is
// open and stays there afterwards, empty of meaning.
type Lock struct{ f *os.File }

// Take takes the lock of the house at path, or says who holds it.
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
	_, _ = f.WriteAt([]byte(strconv.Itoa(os.Getpid())+"\n"), 0) // for people; the lock holds without it
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

// Release gives the lock back.
func (l *Lock) Release() { l.f.Close() }
