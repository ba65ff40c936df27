package access

import (
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"net/http"
	"slices"
	"strings"
	"time"
)

// Names of the cookie that identifies a device on which somebody has signed in.
const (
	secureDevice = "__Host-counterpour-device"
	plainDevice  = "counterpour-device"
)

const (
	mostMarks   = 12                   // people who are remembered per device
	deviceBytes = 16                   // length of a random id
	deviceLife  = 365 * 24 * time.Hour // longer than any session: it grants no access
)

// deviceMark proves that a person has signed in on a device. It is an HMAC (RFC 2104)
// with the person's passcode hash as its key, so it outlives the program, and becomes
// invalid with the passcode.
func deviceMark(passcode *hash, key, id string) string {
	h := hmac.New(sha256.New, passcode.sum)
	h.Write([]byte("counterpour device\x00" + key + "\x00" + id))
	return tokenCode.EncodeToString(h.Sum(nil))
}

// knowDevice returns the cookie of a device on which somebody has just signed in. It
// keeps the marks of others, since several people share a tablet.
func (g *Guard) knowDevice(r *http.Request, passcode *hash, key string) *http.Cookie {
	id, marks := g.deviceCookie(r)
	if len(id) != tokenCode.EncodedLen(deviceBytes) {
		raw := make([]byte, deviceBytes)
		rand.Read(raw) // never fails
		id, marks = tokenCode.EncodeToString(raw), nil
	}
	mark := deviceMark(passcode, key, id)
	marks = slices.DeleteFunc(marks, func(m string) bool { return m == mark || len(m) != len(mark) })
	marks = append([]string{mark}, marks[:min(len(marks), mostMarks-1)]...)
	c := g.cookie(r, id+"."+strings.Join(marks, "."), int(deviceLife/time.Second))
	c.Name = g.deviceName(r)
	return c
}

// deviceOf returns the id of a request's device; "" if the person has not signed in on
// it, or has changed their passcode since.
func (g *Guard) deviceOf(r *http.Request, passcode *hash, key string) string {
	id, marks := g.deviceCookie(r)
	if len(id) != tokenCode.EncodedLen(deviceBytes) {
		return ""
	}
	want := []byte(deviceMark(passcode, key, id))
	for _, mark := range marks[:min(len(marks), mostMarks)] {
		if hmac.Equal([]byte(mark), want) {
			return id
		}
	}
	return ""
}

// deviceCookie parses a request's device cookie. The result is not verified.
func (g *Guard) deviceCookie(r *http.Request) (id string, marks []string) {
	c, err := r.Cookie(g.deviceName(r))
	if err != nil {
		return "", nil
	}
	words := strings.Split(c.Value, ".")
	return words[0], words[1:]
}

func (g *Guard) deviceName(r *http.Request) string {
	if g.secure(r) {
		return secureDevice
	}
	return plainDevice
}
