package house

import (
	"errors"
	"io/fs"
	"syscall"

	driver "modernc.org/sqlite"
)

// Result codes of SQLite, https://sqlite.org/rescode.html.
const (
	codeError      = 1 // a statement of ours that the file's tables do not take
	codeBusy       = 5
	codeLocked     = 6
	codeReadOnly   = 8
	codeCorrupt    = 11
	codeFull       = 13
	codeCannotOpen = 14
	codeConstraint = 19
	codeNotADB     = 26
	codeShmSize    = 10 | 19<<8 // the log's index could not grow
	codeCorruptFS  = 10 | 33<<8
)

func classifySQLite(err error) error {
	var e *driver.Error
	if !errors.As(err, &e) {
		return classifyFile(err)
	}
	switch e.Code() {
	case codeShmSize:
		return ErrFull
	case codeCorruptFS:
		return ErrDamaged
	}
	switch e.Code() & 0xff {
	case codeBusy, codeLocked:
		return ErrBusy
	case codeReadOnly, codeCannotOpen: // the log beside the file cannot be made
		return ErrReadOnly
	case codeError, codeCorrupt, codeNotADB:
		return ErrDamaged
	case codeFull:
		return ErrFull
	case codeConstraint:
		return ErrInvalid
	}
	return nil
}

func classifyFile(err error) error {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return ErrFull
	case errors.Is(err, syscall.EROFS), errors.Is(err, fs.ErrPermission):
		return ErrReadOnly
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return ErrNotFound
	case errors.Is(err, fs.ErrExist):
		return ErrConflict
	}
	return nil
}
