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
	mostPasscode  = 200
)

// cost is the cost of one argon2id computation.
type cost struct {
	memory uint32 // KiB
	passes uint32
	lanes  uint8
}

// usual is the second recommended option of RFC 9106, section 4: 64 MiB, three passes,
// four lanes, a salt of 128 bits and a hash of 256 bits.
var usual = cost{memory: 64 << 10, passes: 3, lanes: 4}

const (
	usualSalt = 16 // bytes
	usualSum  = 32
)

// Limits of the parameters in the roster. The lowest are the weakest setting of the OWASP
// cheat sheet on password storage (from memory): 7 MiB in five passes, or the same work
// in fewer passes over more memory. The highest keep two concurrent checks within half a
// gigabyte, and one check within seconds.
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

// check refuses a cost that is too low to be safe or too high to be run.
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

// hash is a passcode hash with its parameters.
type hash struct {
	cost
	salt, sum []byte
}

// coded is base64 without padding, in strict mode, so that each value has one form.
var coded = base64.RawStdEncoding.Strict()

// String returns the hash in PHC string format.
func (h *hash) String() string {
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argon2.Version, h.memory, h.passes, h.lanes,
		coded.EncodeToString(h.salt), coded.EncodeToString(h.sum))
}

// parseHash reads an argon2id hash in PHC string format. Its errors do not quote the
// text: the user may have written a passcode in its place.
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
	// Base64 ignores line ends. Only the canonical form is accepted.
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

// deriver computes the hash of a passcode.
type deriver func(passcode string, h *hash) []byte

func derive(passcode string, h *hash) []byte {
	return argon2.IDKey([]byte(passcode), h.salt, h.passes, h.memory, h.lanes, uint32(len(h.sum)))
}

func (h *hash) matches(sum []byte) bool { return subtle.ConstantTimeCompare(h.sum, sum) == 1 }

// prepare normalises a passcode by RFC 8265's OpaqueString and trims it: keyboards encode
// accents differently and add spaces at the end.
func prepare(passcode string) (string, error) {
	if !utf8.ValidString(passcode) {
		return "", errors.New("not UTF-8")
	}
	return precis.OpaqueString.String(strings.TrimSpace(passcode))
}

// HashPasscode returns the entry for a passcode in a roster: argon2id with the second
// recommended option of RFC 9106, section 4, in PHC string format. A passcode has
// [LeastPasscode] to 200 characters after trimming; any other is a
// [*flavor.DataFault], which does not quote it.
func HashPasscode(passcode string) (string, error) {
	if n := utf8.RuneCountInString(strings.TrimSpace(passcode)); n < LeastPasscode || n > mostPasscode {
		return "", faultOf("passcode", "", "a passcode of %d characters is not allowed; use %d to %d, such as four words that have nothing to do with each other",
			n, LeastPasscode, mostPasscode)
	}
	text, err := prepare(passcode)
	if err != nil {
		return "", faultOf("passcode", "", "the passcode holds characters that not every keyboard can write; use letters, digits, blanks and signs")
	}
	h := &hash{cost: usual, salt: make([]byte, usualSalt), sum: make([]byte, usualSum)} // derive uses the length of sum
	rand.Read(h.salt)                                                                   // never fails
	h.sum = derive(text, h)
	return h.String(), nil
}
