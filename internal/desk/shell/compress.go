package shell

import (
	"bytes"
	"compress/gzip"
	"net/http"
	"strconv"
	"strings"
)

// leastCompressed is the least bytes that are worth compressing for one answer; what is
// compressed once for all may be smaller.
const leastCompressed = 1 << 10

// compressed returns data as gzip.
func compressed(data []byte) []byte {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	_, _ = z.Write(data) // a bytes.Buffer takes everything
	_ = z.Close()
	return b.Bytes()
}

// takesGzip reports whether a visitor's browser reads gzip.
func takesGzip(r *http.Request) bool {
	for part := range strings.SplitSeq(r.Header.Get("Accept-Encoding"), ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if name == "gzip" && strings.ReplaceAll(weight, " ", "") != "q=0" {
			return true
		}
	}
	return false
}

// Send writes a whole answer; packed is its gzip form, or nil to make it now.
func Send(w http.ResponseWriter, r *http.Request, status int, kind string, data, packed []byte) {
	h := w.Header()
	h.Set("Content-Type", kind)
	h.Add("Vary", "Accept-Encoding")
	worth := len(data) >= leastCompressed || packed != nil && len(packed) < len(data)
	if worth && takesGzip(r) {
		if packed == nil {
			packed = compressed(data)
		}
		h.Set("Content-Encoding", "gzip")
		data = packed
	}
	h.Set("Content-Length", strconv.Itoa(len(data)))
	w.WriteHeader(status)
	_, _ = w.Write(data) // the visitor may have left
}

// SendFile sends a file to keep, under a name.
func SendFile(w http.ResponseWriter, r *http.Request, kind, name string, data []byte) {
	w.Header().Set("Content-Disposition", "attachment; filename="+strconv.Quote(name))
	Send(w, r, http.StatusOK, kind, data, nil)
}
