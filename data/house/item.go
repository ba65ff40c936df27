package house

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"

	"golang.org/x/text/unicode/norm"
)

// Kind is a kind of record.
type Kind string

// The kinds of records.
const (
	KindBottle   Kind = "bottle"
	KindMade     Kind = "made"
	KindSpec     Kind = "spec"
	KindOut      Kind = "out"
	KindCover    Kind = "cover"
	KindTraining Kind = "training"
	KindRight    Kind = "right"
	KindTriangle Kind = "triangle"
	KindName     Kind = "name"
	KindPrice    Kind = "price"
	KindSettings Kind = "settings"
)

// RecordKinds lists every kind of record in alphabetical order.
func RecordKinds() []Kind {
	return []Kind{KindBottle, KindCover, KindMade, KindName, KindOut, KindPrice, KindRight, KindSettings, KindSpec, KindTraining, KindTriangle}
}

// Known reports whether this version of the program knows a kind of record.
func Known(kind Kind) bool { return slices.Contains(RecordKinds(), kind) }

// Ref identifies a record.
type Ref struct {
	Kind Kind   `json:"kind"`
	ID   string `json:"id"`
}

// String returns the kind and the id.
func (r Ref) String() string { return string(r.Kind) + " " + r.ID }

// Item is the content of a record: a [Bottle], [Made], [Spec], [Out], [ServedCover],
// [Training], [Triangle], [Right], [MenuPrice], [Name] or [Settings], by value.
type Item interface {
	Ref() Ref
	check() error // the first rule that it breaks, in words for the user
	clean() Item  // a copy in the form that is stored
	withID(string) Item
	links() []Ref // the records that it refers to
}

var decoders = map[Kind]func([]byte, bool) (Item, error){
	KindBottle:   decodeAs[Bottle],
	KindMade:     decodeAs[Made],
	KindSpec:     decodeAs[Spec],
	KindOut:      decodeAs[Out],
	KindCover:    decodeAs[ServedCover],
	KindTraining: decodeAs[Training],
	KindRight:    decodeAs[Right],
	KindPrice:    decodeAs[MenuPrice],
	KindTriangle: decodeAs[Triangle],
	KindName:     decodeAs[Name],
	KindSettings: decodeAs[Settings],
}

func decodeAs[T Item](body []byte, strict bool) (Item, error) {
	var v T
	d := json.NewDecoder(bytes.NewReader(body))
	if strict {
		d.DisallowUnknownFields()
	}
	if err := d.Decode(&v); err != nil {
		return nil, err
	}
	if d.More() {
		return nil, errors.New("there is more after the end of the record")
	}
	return v, nil
}

// Encode returns an item as JSON, as it is stored.
func Encode(item Item) ([]byte, error) {
	return json.Marshal(item.clean())
}

// Decode reads what [Encode] wrote and checks it. An unknown field is an error.
func Decode(kind Kind, body []byte) (Item, error) {
	item, err := decode(kind, body, true)
	if err == nil {
		err = Check(item)
	}
	return item, err
}

// DecodeKept reads a stored record that any version of the program wrote: it ignores
// unknown fields and checks no rules.
func DecodeKept(kind Kind, body []byte) (Item, error) { return decode(kind, body, false) }

// Numbered reports whether records of a kind get an id if they are written without one.
func Numbered(kind Kind) bool { return kind == KindCover || kind == KindTraining }

// WithID returns a copy of an item with another id.
func WithID(item Item, id string) Item { return item.withID(id) }

// Links lists the records that an item refers to.
func Links(item Item) []Ref { return item.links() }

func decode(kind Kind, body []byte, strict bool) (Item, error) {
	f, ok := decoders[kind]
	if !ok {
		return nil, fail(ErrInvalid, "read", string(kind), "is no kind of record; use one of %v", RecordKinds())
	}
	item, err := f(body, strict)
	if err != nil {
		return nil, &Error{Kind: ErrInvalid, Op: "read", Key: string(kind), Message: "the record cannot be read: " + err.Error(), Cause: err}
	}
	return item, nil
}

// Check returns nil, or an error of kind [ErrInvalid] that names the rule of the house
// that an item breaks. Its cause is a [*flavor.DataFault] that names the field.
func Check(item Item) error {
	item = item.clean()
	ref := item.Ref()
	err := CheckID(ref.ID)
	if err == nil {
		err = item.check()
	}
	if err != nil {
		broken := fail(ErrInvalid, "check", strings.TrimSpace(ref.String()), "%s", err)
		broken.Cause = err
		return broken
	}
	return nil
}

// Limits of the size of one record. A larger one is a mistake.
const (
	MaxID   = 80
	MaxLine = 200
	MaxNote = 10000
	MaxList = 100
)

var idPattern = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// CheckID returns an error unless an id consists of lower-case words joined by hyphens,
// with at most MaxID letters.
func CheckID(id string) error {
	if len(id) > MaxID || !idPattern.MatchString(id) {
		return invalid("id", id, "id %q must be lower-case words joined by hyphens, %d letters at most", id, MaxID)
	}
	return nil
}

// Slug turns a name into an id: "Crème Halyard" becomes "creme-halyard". It is empty if
// the name has no letters or digits that an id can contain.
func Slug(name string) string {
	bare := strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) || r == '\'' || r == '’' {
			return -1
		}
		return r
	}, norm.NFKD.String(strings.ToLower(name)))
	words := strings.FieldsFunc(bare, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	})
	id := strings.Join(words, "-")
	if len(id) > MaxID {
		id = strings.Trim(id[:MaxID], "-")
	}
	return id
}

// IDOf turns a name in any script into an id: its slug or, if that is empty, the kind and
// a hash of the name. It is empty only for an empty name.
func IDOf(kind Kind, name string) string {
	id := Slug(name)
	if id == "" && name != "" {
		sum := sha256.Sum256([]byte(name))
		id = string(kind) + "-" + hex.EncodeToString(sum[:4])
	}
	return id
}

// invalid returns the fault of a field that breaks a rule. The message names the field,
// for places where only the message is shown.
func invalid(field string, value any, format string, args ...any) *flavor.DataFault {
	return &flavor.DataFault{Kind: flavor.ErrInvalid, Field: field, Value: fmt.Sprint(value), Message: fmt.Sprintf(format, args...)}
}

// checks returns the first error that is not nil.
func checks(rules ...error) error {
	for _, err := range rules {
		if err != nil {
			return err
		}
	}
	return nil
}

func checkLine(field, s string, needed bool) error {
	switch {
	case needed && strings.TrimSpace(s) == "":
		return invalid(field, s, "%s must not be empty", field)
	case strings.ContainsFunc(s, unicode.IsControl):
		return invalid(field, s, "%s must be one line, without control characters", field)
	}
	return checkText(field, s, MaxLine)
}

func checkText(field, s string, most int) error {
	switch {
	case !utf8.ValidString(s) || strings.ContainsRune(s, 0):
		return invalid(field, s, "%s is not text; write it again", field)
	case utf8.RuneCountInString(s) > most:
		return invalid(field, s, "%s is longer than %d characters", field, most)
	}
	return nil
}

// checkRange returns an error unless low <= v <= high; NaN is never in range.
func checkRange(field string, v, low, high float64) error {
	if !(v >= low && v <= high) || math.IsInf(v, 0) {
		fault := invalid(field, v, "%s is %s, and must be between %s and %s", field, plain(v), plain(low), plain(high))
		fault.Bounds = &flavor.Bounds{Least: low, Most: high}
		return fault
	}
	return nil
}

// plain writes a number with all its digits, never as a power of ten.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func checkOptional(field string, v *float64, low, high float64) error {
	if v == nil {
		return nil
	}
	return checkRange(field, *v, low, high)
}

func checkTime(field string, t time.Time) error {
	if t.Year() < 1900 || t.Year() > 9000 {
		return invalid(field, t, "%s must be a date and a time", field)
	}
	return nil
}

func oneOf[T ~string](field string, v T, known []T) error {
	if slices.Contains(known, v) {
		return nil
	}
	return invalid(field, v, "%s %q is not known; use one of %q", field, v, known)
}

// lines converts all line ends to "\n".
func lines(s string) string { return lineEnds.Replace(s) }

var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// tidy returns a name on one line, with single spaces and without invisible characters.
func tidy(name string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if r == '\u200B' || r == '\u2060' || r == '\uFEFF' {
			return -1
		}
		return r
	}, name)), " ")
}

// utc drops the time zone and the monotonic clock reading, which are not stored.
func utc(t time.Time) time.Time { return t.UTC().Round(0) }
