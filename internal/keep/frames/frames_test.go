package frames

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// jpegBytes is a small picture.
func jpegBytes(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 16, 8)), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func jpegFile(t testing.TB, dir, name string) string {
	t.Helper()
	return file(t, dir, name, jpegBytes(t))
}

func file(t testing.TB, dir, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

// taken is a small picture with Exif data of its own: when, 1/1000 s, f/2.8, ISO 3200, 200 mm.
func taken(t testing.TB, at time.Time) []byte {
	t.Helper()
	plain := jpegBytes(t)
	exif := exifBlock(at)
	head := []byte{0xff, 0xd8, 0xff, 0xe1, byte((len(exif) + 2) >> 8), byte(len(exif) + 2)}
	return append(append(head, exif...), plain[2:]...)
}

// exifBlock writes an Exif segment by hand (TIFF 6.0, little endian).
func exifBlock(at time.Time) []byte {
	le := binary.LittleEndian
	b := []byte("Exif\x00\x00II*\x00\x08\x00\x00\x00")
	row := func(tag, kind uint16, count, value uint32) {
		b = le.AppendUint16(b, tag)
		b = le.AppendUint16(b, kind)
		b = le.AppendUint32(b, count)
		b = le.AppendUint32(b, value)
	}
	b = le.AppendUint16(b, 1) // IFD0: one entry, to the Exif IFD
	row(0x8769, 4, 1, 26)
	b = le.AppendUint32(b, 0)
	b = le.AppendUint16(b, 5)
	const data = 26 + 2 + 5*12 + 4
	row(0x829a, 5, 1, data)
	row(0x829d, 5, 1, data+8)
	row(0x8827, 3, 1, 3200)
	row(0x9003, 2, 20, data+24)
	row(0x920a, 5, 1, data+16)
	b = le.AppendUint32(b, 0)
	for _, n := range []uint32{1, 1000, 28, 10, 200, 1} {
		b = le.AppendUint32(b, n)
	}
	return append(b, at.Format("2006:01:02 15:04:05")+"\x00"...)
}

var noon = time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)

func TestAFolderOfAllSorts(t *testing.T) {
	dir := t.TempDir()
	good := taken(t, noon)
	file(t, dir, "b/two.jpg", taken(t, noon.Add(-time.Minute)))
	file(t, dir, "one.JPG", good)
	file(t, dir, "renamed.nef", good) // a JPEG by its content
	file(t, dir, "empty.jpg", nil)
	file(t, dir, "words.jpg", []byte("no picture at all, but long enough to be looked at"))
	file(t, dir, "cut.jpg", good[:40])
	jpegFile(t, dir, "timeless.jpg")
	file(t, dir, "notes.txt", []byte("passed over"))
	file(t, dir, ".hidden/three.jpg", good)
	for link, to := range map[string]string{"circle.jpg": "circle.jpg", "up.jpg": "..", "lost.jpg": "nowhere.jpg", "again": "."} {
		if err := os.Symlink(to, filepath.Join(dir, link)); err != nil {
			t.Fatal(err)
		}
	}
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe.jpg"), 0o666); err != nil {
		t.Fatal(err)
	}
	found, err := Read(t.Context(), []string{dir}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range found.Frames {
		names = append(names, filepath.Base(f.File))
		if f.ISO.Or(0) != 3200 || f.Stop.Or(0) != 2.8 || f.Focal.Or(0).Millimetres() != 200 || f.Pixels != [2]int{16, 8} {
			t.Errorf("%+v", f)
		}
	}
	if want := []string{"two.jpg", "one.JPG", "renamed.nef"}; !slices.Equal(names, want) {
		t.Errorf("frames %v, want %v", names, want)
	}
	causes := map[string]Cause{}
	for _, x := range found.Troubles {
		causes[filepath.Base(x.File)] = x.Cause
	}
	for name, want := range map[string]Cause{"empty.jpg": Empty, "words.jpg": NoPicture, "cut.jpg": NoTime, "timeless.jpg": NoTime,
		"circle.jpg": LinkLost, "lost.jpg": LinkLost, "up.jpg": LinkFolder, "again": LinkFolder, "pipe.jpg": NoFile} {
		if got := causes[name]; got != want && !(name == "cut.jpg" && got == Broken) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
		delete(causes, name)
	}
	if len(causes) > 0 {
		t.Errorf("also %v", causes)
	}
	if _, err := Read(t.Context(), []string{filepath.Join(dir, "nowhere")}, nil); err == nil {
		t.Error("a folder that is not there is read")
	}
}

// TestARawFileAndItsJPEGAreOneFrame, rated by the sidecar.
func TestARawFileAndItsJPEGAreOneFrame(t *testing.T) {
	dir := t.TempDir()
	file(t, dir, "a.jpg", taken(t, noon))
	file(t, dir, "a.nef", taken(t, noon))
	file(t, dir, "a.xmp", []byte(`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:xmp="http://ns.adobe.com/xap/1.0/"><xmp:Rating>5</xmp:Rating></rdf:Description></rdf:RDF></x:xmpmeta>`))
	// Whatever the prefix: the namespace says that it is a rating.
	file(t, dir, "b.jpg", taken(t, noon.Add(time.Hour)))
	file(t, dir, "b.jpg.xmp", []byte(`<x xmlns:xap="http://ns.adobe.com/xap/1.0/" xmlns:other="urn:other" other:Rating="1"><d xap:Rating="2"/><broken>`))
	found, err := Read(t.Context(), []string{dir}, nil)
	if n := len(found.Frames); n != 2 || found.Frames[1].Rating.Or(0) != 2 {
		t.Fatalf("%d frames, %+v", n, found)
	}
	found.Frames = found.Frames[:1]
	if err != nil || len(found.Frames) != 1 || found.Frames[0].Rating.Or(0) != 5 || filepath.Ext(found.Frames[0].File) != ".jpg" {
		t.Errorf("%+v, %v", found, err)
	}
}

// TestAStoppedRunGoesOn stops a run, and goes on with what its journal kept; a picture
// that changed is read again.
func TestAStoppedRunGoesOn(t *testing.T) {
	dir := t.TempDir()
	for i := range 20 {
		file(t, dir, fmt.Sprintf("%02d.jpg", i), taken(t, noon.Add(time.Duration(i)*time.Second)))
	}
	var kept bytes.Buffer
	open := func() *Journal {
		t.Helper()
		j, err := NewJournal(struct {
			io.Reader
			io.Writer
		}{bytes.NewReader(kept.Bytes()), &kept})
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := Read(ctx, []string{dir}, open()); !errors.Is(err, context.Canceled) {
		t.Fatalf("a stopped run ends with %v", err)
	}
	if _, err := Read(t.Context(), []string{filepath.Join(dir, "00.jpg"), filepath.Join(dir, "01.jpg")}, open()); err != nil {
		t.Fatal(err)
	}
	kept.WriteString(`{"files":[{"path":"half`) // stopped in the middle of a line
	file(t, dir, "01.jpg", append(taken(t, noon.Add(time.Hour)), 0))
	found, err := Read(t.Context(), []string{dir}, open())
	if err != nil || found.Known != 1 || len(found.Frames) != 20 || filepath.Base(found.Frames[19].File) != "01.jpg" {
		t.Errorf("%d known, %d frames, %v", found.Known, len(found.Frames), err)
	}
	if found, err = Read(t.Context(), []string{dir}, open()); err != nil || found.Known != 20 || found.Frames[0].ISO.Or(0) != 3200 {
		t.Errorf("then %d known, %v", found.Known, err)
	}
}

// pulled is a card that is taken out while it is read.
type pulled struct {
	*bytes.Reader
	left int
}

func (p *pulled) Read(b []byte) (int, error) {
	if p.left -= len(b); p.left < 0 {
		return 0, syscall.EIO
	}
	return p.Reader.Read(b)
}

func TestACardPulledInMidRead(t *testing.T) {
	_, trouble := read("x.jpg", &pulled{bytes.NewReader(taken(t, noon)), headBytes + 8})
	if trouble.Cause != Unreadable || !errors.Is(trouble.Err, syscall.EIO) {
		t.Errorf("%+v", trouble)
	}
}

// TestCutAtEveryByte: a picture that ends anywhere says why it is no frame, or tells its
// time in full.
func TestCutAtEveryByte(t *testing.T) {
	whole := taken(t, noon)
	for n := range len(whole) {
		frame, trouble := read("x.jpg", bytes.NewReader(whole[:n]))
		if trouble.Cause == "" && !frame.Taken.Equal(noon) {
			t.Errorf("%d of %d bytes: taken %v", n, len(whole), frame.Taken)
		}
	}
}

// TestNoMoreIsReadThanABound gives a picture whose data begin behind gigabytes of filler.
func TestNoMoreIsReadThanABound(t *testing.T) {
	segment := append([]byte{0xff, 0xe2, 0xff, 0xff}, make([]byte, 0xffff-2)...)
	in := &endless{head: []byte{0xff, 0xd8}, again: segment}
	_, trouble := read("x.jpg", in)
	if trouble.Cause == "" || in.given > mostRead+1<<16 {
		t.Errorf("%+v after %d bytes", trouble, in.given)
	}
}

// endless gives its head, then the same bytes for ever.
type endless struct {
	head, again []byte
	at, given   int64
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		if e.at < int64(len(e.head)) {
			p[i] = e.head[e.at]
		} else {
			p[i] = e.again[(e.at-int64(len(e.head)))%int64(len(e.again))]
		}
		e.at++
	}
	e.given += int64(len(p))
	return len(p), nil
}

func (e *endless) Seek(offset int64, whence int) (int64, error) {
	switch whence {
	case io.SeekStart:
		e.at = offset
	case io.SeekCurrent:
		e.at += offset
	}
	if e.at > 1<<32 { // a file of 4 GB ends some time
		return e.at, io.EOF
	}
	return e.at, nil
}

// FuzzRead reads what anybody may have put on a card: it ends, says why, and panics never.
func FuzzRead(f *testing.F) {
	f.Add(taken(f, noon))
	f.Add(jpegBytes(f))
	f.Add([]byte("II*\x00\x08\x00\x00\x00\xff\xff\x69\x87"))
	f.Add([]byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic\x00\x00\xff\xffmeta"))
	if huge, err := filepath.Glob(filepath.Join(strings.TrimSuffix(samples(f)[0], filepath.Base(samples(f)[0])), "corrupt", "*.jpg")); err == nil {
		for _, path := range huge {
			if data, err := os.ReadFile(path); err == nil && len(data) < 1<<16 {
				f.Add(data)
			}
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		frame, trouble := read("x.nef", bytes.NewReader(data))
		if trouble.Cause == "" && frame.Taken.IsZero() {
			t.Errorf("a frame without a time, and no cause")
		}
	})
}
