package frame

import (
	"bytes"
	"compress/gzip"
	"sync"
)

// leastPacked is the bytes from which a page is packed: below, it fits in one packet anyway.
const leastPacked = 1400

// packer packs pages by gzip, at the level that takes least time: a list of the menu becomes a
// seventh of its size. Its writers are used again, since each holds more memory than a page. The
// zero value is ready.
type packer struct{ writers sync.Pool }

func (p *packer) pack(page []byte) []byte {
	z, _ := p.writers.Get().(*gzip.Writer)
	if z == nil {
		z, _ = gzip.NewWriterLevel(nil, gzip.BestSpeed) // it is a level
	}
	defer p.writers.Put(z)
	var b bytes.Buffer
	z.Reset(&b)
	_, _ = z.Write(page) // a buffer takes all that is written
	_ = z.Close()
	return b.Bytes()
}
