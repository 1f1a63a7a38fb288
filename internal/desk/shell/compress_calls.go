package shell

import (
	"compress/gzip"
	"net/http"
	"strings"
)

// Squeezed compresses the answers of the API on their way out, for desks that
// are far away: a drag step's answer shrinks from 45 kB to some 10.
func Squeezed(next http.HandlerFunc) Answer {
	return func(w http.ResponseWriter, r *http.Request) error {
		if !takesGzip(r) {
			next(w, r)
			return nil
		}
		s := &squeezer{ResponseWriter: w}
		defer s.close()
		next(s, r)
		return nil
	}
}

// squeezer compresses what is text; archives and prints go out as they are.
type squeezer struct {
	http.ResponseWriter
	begun bool
	z     *gzip.Writer // nil for an answer that goes out as it is
}

// Unwrap returns the writer below, for [http.ResponseController].
func (s *squeezer) Unwrap() http.ResponseWriter { return s.ResponseWriter }

// WriteHeader settles whether the answer is compressed.
func (s *squeezer) WriteHeader(status int) {
	if !s.begun {
		s.begin(status)
	}
	s.ResponseWriter.WriteHeader(status)
}

// Write writes a part of the answer.
func (s *squeezer) Write(data []byte) (int, error) {
	if !s.begun {
		s.begin(http.StatusOK)
	}
	if s.z == nil {
		return s.ResponseWriter.Write(data)
	}
	return s.z.Write(data)
}

func (s *squeezer) begin(status int) {
	s.begun = true
	h := s.Header()
	kind := h.Get("Content-Type")
	text := strings.Contains(kind, "json") || strings.HasPrefix(kind, "text/") || strings.Contains(kind, "svg") || strings.Contains(kind, "yaml")
	if !text || status == http.StatusNoContent || h.Get("Content-Encoding") != "" {
		return
	}
	h.Add("Vary", "Accept-Encoding")
	h.Set("Content-Encoding", "gzip")
	h.Del("Content-Length")
	s.z, _ = gzip.NewWriterLevel(s.ResponseWriter, gzip.BestSpeed) // the level is a valid one
}

func (s *squeezer) close() {
	if s.z != nil {
		_ = s.z.Close() // the visitor may have left
	}
}
