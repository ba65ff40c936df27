package access

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/base64"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/crypto/argon2"
	"golang.org/x/text/secure/precis"
)

// Length of a passcode, in characters.
const (
	LeastPasscode = 8
	MostPasscode  = 200
)

// cost is what one check of a passcode takes.
type cost struct {
	memory uint32 // KiB
	passes uint32
	lanes  uint8
}

// usual is the second recommended option of RFC 9106, section 4: 64 MiB, three
// passes, four lanes, with a salt of 128 bits and a hash of 256.
var usual = cost{memory: 64 << 10, passes: 3, lanes: 4}

const (
	usualSalt = 16 // bytes
	usualSum  = 32
)

// What the book may ask for. The least is the weakest setting that the OWASP
// cheat sheet on password storage lists (from memory): 7 MiB in five passes, or
// as much work in fewer passes over more. The most keeps two checks at once
// within half a gigabyte and a check within seconds.
const (
	leastMemory = 7 << 10    // KiB
	mostMemory  = 256 << 10  // KiB
	leastWork   = 35 << 10   // KiB times passes
	mostWork    = 1024 << 10 // KiB times passes
	mostLanes   = 16
	leastSalt   = 8 // bytes; RFC 9106 allows no less
	mostSalt    = 64
	leastSum    = 16 // bytes
	mostSum     = 64
)

// check refuses a cost that is too low to protect or too high to pay.
func (c cost) check() error {
	work := uint64(c.memory) * uint64(c.passes)
	switch {
	case c.lanes < 1 || c.lanes > mostLanes:
		return fmt.Errorf("p=%d is out of range; use 1 to %d lanes", c.lanes, mostLanes)
	case c.memory < leastMemory || c.memory > mostMemory:
		return fmt.Errorf("m=%d is out of range; use %d to %d KiB", c.memory, leastMemory, mostMemory)
	case work < leastWork:
		return fmt.Errorf("m=%d,t=%d is too little work to protect a passcode; m times t must be %d or more", c.memory, c.passes, leastWork)
	case work > mostWork:
		return fmt.Errorf("m=%d,t=%d is more work than a sign-in may cost; m times t may be %d at most", c.memory, c.passes, mostWork)
	}
	return nil
}

// hash is what a passcode is checked against.
type hash struct {
	cost
	salt, sum []byte
}

// coded is how salt and sum are written: base64 without padding, one way only.
var coded = base64.RawStdEncoding.Strict()

// String returns the PHC string form.
func (h *hash) String() string {
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argon2.Version, h.memory, h.passes, h.lanes,
		coded.EncodeToString(h.salt), coded.EncodeToString(h.sum))
}

// parseHash reads the PHC string form of argon2id. Its errors do not repeat the
// text, in whose place somebody may have written a passcode.
func parseHash(text string) (*hash, error) {
	parts := strings.Split(text, "$")
	if len(parts) != 6 || parts[0] != "" || parts[1] != "argon2id" {
		return nil, errors.New("the hash is not of the form $argon2id$v=19$m=…,t=…,p=…$salt$hash")
	}
	if parts[2] != "v="+strconv.Itoa(argon2.Version) {
		return nil, fmt.Errorf("the hash is of another version of argon2; it must say v=%d", argon2.Version)
	}
	h := &hash{}
	var err error
	if h.cost, err = parseCost(parts[3]); err != nil {
		return nil, err
	}
	if h.salt, err = coded.DecodeString(parts[4]); err != nil || len(h.salt) < leastSalt || len(h.salt) > mostSalt {
		return nil, fmt.Errorf("the salt is not %d to %d bytes in base64 without padding", leastSalt, mostSalt)
	}
	if h.sum, err = coded.DecodeString(parts[5]); err != nil || len(h.sum) < leastSum || len(h.sum) > mostSum {
		return nil, fmt.Errorf("the last part is not %d to %d bytes in base64 without padding", leastSum, mostSum)
	}
	// Base64 leaves line ends out, and what is not written back alike is not
	// the one form that there is.
	if h.String() != text {
		return nil, errors.New("the hash is not in its usual form; numbers have no leading zero, and nothing stands between the parts")
	}
	return h, nil
}

func parseCost(text string) (cost, error) {
	var c cost
	words := strings.Split(text, ",")
	if len(words) != 3 {
		return c, errors.New("the cost is not of the form m=…,t=…,p=…, in this order and with nothing else")
	}
	var n [3]uint64
	for i, sign := range []string{"m=", "t=", "p="} {
		digits, ok := strings.CutPrefix(words[i], sign)
		bits := 32
		if sign == "p=" {
			bits = 8
		}
		var err error
		if n[i], err = strconv.ParseUint(digits, 10, bits); !ok || err != nil {
			return c, fmt.Errorf("the cost has no whole number at %s", sign)
		}
	}
	c = cost{memory: uint32(n[0]), passes: uint32(n[1]), lanes: uint8(n[2])}
	return c, c.check()
}

// deriver works out the hash of a passcode.
type deriver func(passcode string, h *hash) []byte

func derive(passcode string, h *hash) []byte {
	return argon2.IDKey([]byte(passcode), h.salt, h.passes, h.memory, h.lanes, uint32(len(h.sum)))
}

func (h *hash) matches(sum []byte) bool { return subtle.ConstantTimeCompare(h.sum, sum) == 1 }

// prepare makes passcodes that look alike the same: keyboards differ in how they
// write an accent, and add blanks at the end. It is RFC 8265's OpaqueString
// without blanks at the ends.
func prepare(passcode string) (string, error) {
	if !utf8.ValidString(passcode) {
		return "", errors.New("not UTF-8")
	}
	return precis.OpaqueString.String(strings.TrimSpace(passcode))
}

// HashPasscode returns what a book holds of a passcode: argon2id at the second
// recommended option of RFC 9106, section 4, in PHC string form. A passcode has
// [LeastPasscode] to [MostPasscode] characters, not counting blanks at its ends;
// any other is a [*flavor.Fault], which does not repeat it.
func HashPasscode(passcode string) (string, error) {
	if n := utf8.RuneCountInString(strings.TrimSpace(passcode)); n < LeastPasscode || n > MostPasscode {
		return "", faultOf("passcode", "", "a passcode of %d characters is not allowed; use %d to %d, such as four words that have nothing to do with each other",
			n, LeastPasscode, MostPasscode)
	}
	text, err := prepare(passcode)
	if err != nil {
		return "", faultOf("passcode", "", "the passcode holds characters that not every keyboard can write; use letters, digits, blanks and signs")
	}
	h := &hash{cost: usual, salt: make([]byte, usualSalt), sum: make([]byte, usualSum)} // derive fills the length of sum
	rand.Read(h.salt)                                                                   // never fails
	h.sum = derive(text, h)
	return h.String(), nil
}
