package store

import (
	"errors"
	"io/fs"
	"syscall"

	"counterpour/data/house"

	driver "modernc.org/sqlite"
)

// Result codes of SQLite, https://sqlite.org/rescode.html.
const (
	codeError      = 1 // an SQL error: the file's tables differ from the schema
	codeBusy       = 5
	codeLocked     = 6
	codeReadOnly   = 8
	codeCorrupt    = 11
	codeFull       = 13
	codeCannotOpen = 14
	codeConstraint = 19
	codeNotADB     = 26
	codeShmSize    = 10 | 19<<8 // the WAL index could not grow
	codeCorruptFS  = 10 | 33<<8
)

func classifySQLite(err error) error {
	var e *driver.Error
	if !errors.As(err, &e) {
		return classifyFile(err)
	}
	switch e.Code() {
	case codeShmSize:
		return house.ErrFull
	case codeCorruptFS:
		return house.ErrDamaged
	}
	switch e.Code() & 0xff {
	case codeBusy, codeLocked:
		return house.ErrBusy
	case codeReadOnly, codeCannotOpen: // the WAL cannot be created
		return house.ErrReadOnly
	case codeError, codeCorrupt, codeNotADB:
		return house.ErrDamaged
	case codeFull:
		return house.ErrFull
	case codeConstraint:
		return house.ErrInvalid
	}
	return nil
}

func classifyFile(err error) error {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return house.ErrFull
	case errors.Is(err, syscall.EROFS), errors.Is(err, fs.ErrPermission):
		return house.ErrReadOnly
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return house.ErrNotFound
	case errors.Is(err, fs.ErrExist):
		return house.ErrConflict
	}
	return nil
}
