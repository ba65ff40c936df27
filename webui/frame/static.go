package frame

import (
	"bytes"
	"cmp"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
	"time"

	"counterpour/webui/say"
)

// kinds are the media types of static files, by extension. The system's own table is not
// used, since it differs between machines.
var kinds = map[string]string{
	".css": "text/css; charset=utf-8",
	".js":  "text/javascript; charset=utf-8",
	".svg": "image/svg+xml",
	".png": "image/png",
	".txt": "text/plain; charset=utf-8",

	".webmanifest": "application/manifest+json",
}

// How long a browser may cache a static file: for ever under a name with the hash of its
// content, otherwise only with revalidation.
const (
	KeepForever = "public, max-age=31536000, immutable"
	AskFirst    = "no-cache"
)

// staticFile is a static file as it is served.
type staticFile struct {
	body   []byte
	packed func() []byte // by gzip, worked out when first asked for; nil if that saves nothing
	kind   string
	hash   string
}

// Statics are the static files under their own names and their hashed ones. They are safe for
// concurrent use.
type Statics struct {
	files  map[string]staticFile
	hashed map[string]string // own name to hashed name
	plain  map[string]string // hashed name to own name
}

// LoadStatics reads every file of the folder static with an extension in kinds.
func LoadStatics(files fs.FS) (*Statics, error) {
	fsys, err := fs.Sub(files, "static")
	if err != nil {
		return nil, fmt.Errorf("frame: %w", err)
	}
	s := &Statics{files: map[string]staticFile{}, hashed: map[string]string{}, plain: map[string]string{}}
	err = fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
		kind, served := kinds[path.Ext(name)]
		if err != nil || d.IsDir() || !served {
			return err
		}
		body, err := fs.ReadFile(fsys, name)
		if err != nil {
			return err
		}
		body = squeezed(name, body)
		if path.Ext(name) == ".js" && path.Dir(name) == "." {
			script, err := say.InScript(name, string(body))
			if err != nil {
				return err
			}
			body = []byte(script)
		}
		sum := sha256.Sum256(body)
		f := staticFile{body: body, kind: kind, hash: hex.EncodeToString(sum[:8]), packed: sync.OnceValue(func() []byte { return packed(body) })}
		ext := path.Ext(name)
		long := strings.TrimSuffix(name, ext) + "." + f.hash + ext
		s.files[name], s.hashed[name], s.plain[long] = f, long, name
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("frame: static files: %w", err)
	}
	return s, nil
}

// link returns the address of a static file; it is the template function static.
func (s *Statics) link(name string) (string, error) {
	long, ok := s.hashed[name]
	if !ok {
		return "", fmt.Errorf("frame: there is no static file %q", name)
	}
	return "/static/" + long, nil
}

// serve sends a static file.
func (s *Statics) serve(w http.ResponseWriter, r *http.Request) error {
	name, keep := r.PathValue("name"), AskFirst
	if plain, ok := s.plain[name]; ok {
		name, keep = plain, KeepForever
	}
	return s.send(w, r, name, keep)
}

// offline sends the service worker. It is at the root of the server, since its scope is
// the folder it is in.
func (s *Statics) offline(w http.ResponseWriter, r *http.Request) error {
	return s.send(w, r, "offline.js", AskFirst)
}

func (s *Statics) send(w http.ResponseWriter, r *http.Request, name, keep string) error {
	f, ok := s.files[name]
	if !ok {
		return ErrNotFound
	}
	h := w.Header()
	h.Set("Content-Type", f.kind)
	h.Set("Cache-Control", keep)
	h.Set("ETag", `"`+f.hash+`"`)
	h.Set("Vary", "Accept-Encoding")
	body := f.body
	if takesGzip(r.Header.Get("Accept-Encoding")) {
		if small := f.packed(); small != nil {
			h.Set("Content-Encoding", "gzip")
			h.Set("ETag", `"`+f.hash+`-gzip"`)
			body = small
		}
	}
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(body))
	return nil
}

// packed is a body packed by gzip, nil if that saves less than a tenth, as with
// pictures.
func packed(body []byte) []byte {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	_, err := z.Write(body)
	if err = cmp.Or(err, z.Close()); err != nil || b.Len() > len(body)*9/10 { // a buffer takes all that is written
		return nil
	}
	return b.Bytes()
}

// takesGzip reports whether a client takes what is packed by gzip (RFC 9110, 12.5.3).
func takesGzip(accept string) bool {
	for offer := range strings.SplitSeq(accept, ",") {
		coding, weight, weighed := strings.Cut(strings.TrimSpace(offer), ";")
		if strings.EqualFold(strings.TrimSpace(coding), "gzip") {
			q, err := strconv.ParseFloat(strings.TrimPrefix(strings.TrimSpace(weight), "q="), 64)
			return !weighed || err == nil && q > 0
		}
	}
	return false
}
