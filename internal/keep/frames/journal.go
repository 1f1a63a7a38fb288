package frames

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"sync"
	"time"

	"example.org/rinkpane/internal/decide/recap"
)

// Journal keeps what was read of which files, a line of JSON each, appended as it is
// read, so that a run that was stopped goes on where it was. A shot is read again when
// one of its files has another size or time of change, or by a program that reads more of
// it. A nil journal keeps nothing.
type Journal struct {
	mu    sync.Mutex
	out   io.Writer
	known map[string]entry
	err   error
}

// entry is what is kept of a shot. Troubles are not kept: they are tried again.
type entry struct {
	Reader   int          `json:"reader"` // [reads] of the program that read it
	Files    []stamp      `json:"files"`
	Frame    *recap.Frame `json:"frame"`
	troubles []Trouble
	known    bool
}

// stamp tells whether a file is the one that was read.
type stamp struct {
	Path    string    `json:"path"`
	Size    int64     `json:"size"`
	Changed time.Time `json:"changed"`
}

// reads counts the changes of what is read of a file.
const reads = 2

// mostLine is the longest line that is taken for an entry, in bytes.
const mostLine = 1 << 20

// NewJournal reads what an earlier run kept and appends to it. A last line that a stopped
// run left half written is passed over.
func NewJournal(f io.ReadWriter) (*Journal, error) {
	j := &Journal{out: f, known: map[string]entry{}}
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, mostLine)
	whole := true
	for lines.Scan() {
		var e entry
		if whole = json.Unmarshal(lines.Bytes(), &e) == nil; whole && e.Frame != nil && len(e.Files) > 0 && e.Reader == reads {
			j.known[e.Files[0].Path] = e
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	if !whole {
		if _, err := f.Write([]byte("\n")); err != nil {
			return nil, err
		}
	}
	return j, nil
}

// read returns what is known of a shot, or reads it.
func (j *Journal) read(s shot) entry {
	if j == nil {
		return s.read()
	}
	now, err := s.stamps()
	if err != nil || len(now) == 0 {
		return s.read()
	}
	j.mu.Lock()
	before, met := j.known[now[0].Path]
	j.mu.Unlock()
	if met && same(before.Files, now) {
		before.known = true
		return before
	}
	e := s.read()
	e.Reader, e.Files = reads, now
	if e.Frame != nil {
		j.keep(e)
	}
	return e
}

func (s shot) stamps() (out []stamp, err error) {
	for _, path := range append(append([]string(nil), s.pictures...), s.sidecars...) {
		info, err := os.Stat(path)
		if err != nil {
			return nil, err
		}
		out = append(out, stamp{path, info.Size(), info.ModTime().UTC()})
	}
	return out, nil
}

func same(a, b []stamp) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Path != b[i].Path || a[i].Size != b[i].Size || !a[i].Changed.Equal(b[i].Changed) {
			return false
		}
	}
	return true
}

// keep appends an entry, a line in one write.
func (j *Journal) keep(e entry) {
	line, err := json.Marshal(e)
	j.mu.Lock()
	defer j.mu.Unlock()
	if err == nil {
		_, err = j.out.Write(append(bytes.TrimSpace(line), '\n'))
	}
	j.err = errors.Join(j.err, err)
}

// failure says what could not be kept.
func (j *Journal) failure() error {
	if j == nil {
		return nil
	}
	j.mu.Lock()
	defer j.mu.Unlock()
	return j.err
}
