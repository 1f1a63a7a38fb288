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

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/tell/words"
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
	rows := how("")[:4]
	rows = append(rows, ascii(0x9003, at.Format("2006:01:02 15:04:05")))
	return jpegOf(t, blockOf(tiffPlain, nil, rows))
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

// TestCausesHaveWords: each cause is told in words; "empty" is one.
func TestCausesHaveWords(t *testing.T) {
	for _, c := range []Cause{NoPicture, RawKind, Alone, Broken, TooMuch, NoTime, Unreadable, LinkLost, LinkFolder, NoFile} {
		if words.UnreadCause(string(c)) == string(c) {
			t.Errorf("%s has no words", c)
		}
	}
}

// TestSidecars: a raw file of a kind that is not read is told by its sidecar or the JPEG of
// its name, and counted without; a sidecar without its picture is counted.
func TestSidecars(t *testing.T) {
	dir := t.TempDir()
	const said = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""
 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:exif="http://ns.adobe.com/exif/1.0/" xmlns:tiff="http://ns.adobe.com/tiff/1.0/" xmlns:aux="http://ns.adobe.com/exif/1.0/aux/"
 xmp:Rating="3" exif:DateTimeOriginal="2026-11-28T12:00:00.05" exif:ExposureTime="1/1000" exif:FNumber="28/10" exif:FocalLength="200/1" tiff:Model="Body" tiff:Orientation="8" aux:SerialNumber="0042">
<exif:ISOSpeedRatings><rdf:Seq> <rdf:li>3200</rdf:li> </rdf:Seq></exif:ISOSpeedRatings></rdf:Description></rdf:RDF></x:xmpmeta>`
	unread := []byte("a raw file of a kind that is not read, whatever is in it")
	file(t, dir, "told.x3f", unread)
	file(t, dir, "told.xmp", []byte(said))
	file(t, dir, "twin.x3f", unread)
	file(t, dir, "twin.jpg", taken(t, noon.Add(time.Hour)))
	file(t, dir, "alone.x3f", unread)
	file(t, dir, "alone.xmp", []byte(strings.ReplaceAll(said, "DateTimeOriginal", "DateTimeDigitized")))
	file(t, dir, "nothing.xmp", []byte(said))
	found, err := Read(t.Context(), []string{dir}, nil)
	if err != nil || len(found.Frames) != 2 {
		t.Fatalf("%+v, %v", found, err)
	}
	if f := found.Frames[0]; filepath.Base(f.File) != "told.x3f" || f.Taken != noon.Add(50e6) || f.Zoned || f.Shutter.Or(0) != 0.001 || f.Stop.Or(0) != 2.8 ||
		f.ISO.Or(0) != 3200 || f.Focal.Or(0).Millimetres() != 200 || f.Rating.Or(0) != 3 || f.Body != "0042" || f.Model != "Body" || !f.Portrait {
		t.Errorf("%+v", f)
	}
	if a, b := found.Troubles[0], found.Troubles[1]; len(found.Troubles) != 2 || filepath.Base(a.File) != "alone.x3f" || a.Cause != RawKind || filepath.Base(b.File) != "nothing.xmp" || b.Cause != Alone {
		t.Errorf("%+v", found.Troubles)
	}
}

// TestHugeFiles reads 8 GB of holes: a JPEG with its data before them, a raw file of boxes
// with XMP behind them, and zeros under a picture's name, in a moment.
func TestHugeFiles(t *testing.T) {
	const huge = 8 << 30
	dir := t.TempDir()
	sparse := func(name string, head, tail []byte) {
		t.Helper()
		path := file(t, dir, name, head)
		if err := os.Truncate(path, huge-int64(len(tail))); err != nil {
			t.Fatal(err)
		}
		f, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
		if err == nil {
			_, err = f.Write(tail)
			err = errors.Join(err, f.Close())
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	cr3 := raws(t, "05")["x.cr3"]
	at := bytes.Index(cr3, []byte(uuidXMP)) - 8
	rated := boxOf("uuid", []byte(uuidXMP), []byte(ratedXMP))
	mdat := binary.BigEndian.AppendUint64([]byte("\x00\x00\x00\x01mdat"), uint64(huge-at-len(rated)))
	sparse("boxes.cr3", slices.Concat(cr3[:at], mdat), rated)
	sparse("data.jpg", taken(t, noon), nil)
	sparse("zeros.jpg", nil, nil)
	sparse("head.jpg", []byte{0xff, 0xd8, 0xff, 0xe0, 0, 2}, nil)
	begin := time.Now()
	found, err := Read(t.Context(), []string{dir}, nil)
	if err != nil || len(found.Frames) != 2 || found.Frames[1].Rating.Or(0) != 4 {
		t.Errorf("%+v, %v", found, err)
	}
	causes := map[string]Cause{}
	for _, x := range found.Troubles {
		causes[filepath.Base(x.File)] = x.Cause
	}
	if causes["zeros.jpg"] != NoPicture || causes["head.jpg"] != TooMuch || len(causes) != 2 {
		t.Errorf("%v", causes)
	}
	t.Logf("read in %v", time.Since(begin))
}

// TestFilesThatGoAway between list and reading are counted, and the rest is read.
func TestFilesThatGoAway(t *testing.T) {
	dir := t.TempDir()
	for i := range 5 {
		file(t, dir, fmt.Sprintf("%d.jpg", i), taken(t, noon))
	}
	shots, _, err := list(t.Context(), []string{dir})
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Remove(filepath.Join(dir, "3.jpg")), os.Remove(filepath.Join(dir, "4.jpg"))); err != nil {
		t.Fatal(err)
	}
	found, err := readAll(t.Context(), shots, nil)
	if err != nil || len(found.Frames) != 3 || len(found.Troubles) != 2 || found.Troubles[0].Cause != Unreadable {
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
	// What a program kept that read less is read again.
	older := strings.ReplaceAll(kept.String(), `"reader":2,`, "")
	kept.Reset()
	kept.WriteString(older)
	if found, err = Read(t.Context(), []string{dir}, open()); err != nil || found.Known != 0 || len(found.Frames) != 20 {
		t.Errorf("by an older program %d known, %v", found.Known, err)
	}
}

// pulled is a card that is taken out while it is read.
type pulled struct {
	*bytes.Reader
	left int
}

func (p *pulled) ReadAt(b []byte, off int64) (int, error) {
	if p.left -= len(b); p.left < 0 {
		return 0, syscall.EIO
	}
	return p.Reader.ReadAt(b, off)
}

func TestACardPulledInMidRead(t *testing.T) {
	data := taken(t, noon)
	_, trouble := ReadFrom("x.jpg", &pulled{bytes.NewReader(data), headBytes + 8}, int64(len(data)))
	if trouble.Cause != Unreadable || !errors.Is(trouble.Err, syscall.EIO) {
		t.Errorf("%+v", trouble)
	}
}

// TestCutAtEveryByte: a picture that ends anywhere says why it is no frame, or tells its
// time in full.
func TestCutAtEveryByte(t *testing.T) {
	whole := taken(t, noon)
	for n := range len(whole) {
		frame, trouble := readBytes("x.jpg", whole[:n])
		if trouble.Cause == "" && !frame.Taken.Equal(noon) {
			t.Errorf("%d of %d bytes: taken %v", n, len(whole), frame.Taken)
		}
	}
}

// readBytes reads a picture that is held in memory.
func readBytes(name string, data []byte) (recap.Frame, Trouble) {
	return ReadFrom(name, bytes.NewReader(data), int64(len(data)))
}

// TestNoMoreIsReadThanABound gives a picture whose data begin behind gigabytes of filler.
// TestTheFirstBytesOfAPictureSuffice: what is cut off behind the tags is not missed.
func TestTheFirstBytesOfAPictureSuffice(t *testing.T) {
	whole := taken(t, noon)
	scan := bytes.LastIndex(whole, []byte{0xff, 0xda})
	if scan < 0 {
		t.Fatal("no picture behind the tags")
	}
	frame, trouble := ReadFrom("x.jpg", bytes.NewReader(whole[:scan+4]), int64(scan+4))
	if trouble.Cause != "" || !frame.Taken.Equal(noon) || frame.Focal.IsZero() {
		t.Errorf("%+v, taken %v, focal length %v", trouble, frame.Taken, frame.Focal)
	}
}

func TestNoMoreIsReadThanABound(t *testing.T) {
	segment := append([]byte{0xff, 0xe2, 0xff, 0xff}, make([]byte, 0xffff-2)...)
	in := &endless{head: []byte{0xff, 0xd8}, again: segment}
	_, trouble := ReadFrom("x.jpg", in, 1<<32)
	if trouble.Cause == "" || in.given > mostRead+1<<16 {
		t.Errorf("%+v after %d bytes", trouble, in.given)
	}
}

// endless gives its head, then the same bytes for ever.
type endless struct {
	head, again []byte
	given       int64
}

func (e *endless) ReadAt(p []byte, off int64) (int, error) {
	for i := range p {
		if at := off + int64(i); at < int64(len(e.head)) {
			p[i] = e.head[at]
		} else {
			p[i] = e.again[(at-int64(len(e.head)))%int64(len(e.again))]
		}
	}
	e.given += int64(len(p))
	return len(p), nil
}

// FuzzRead reads what anybody may have put on a card: it ends, says why, and panics never.
func FuzzRead(f *testing.F) {
	f.Add("x.nef", taken(f, noon))
	f.Add("x.nef", jpegBytes(f))
	f.Add("x.nef", []byte("II*\x00\x08\x00\x00\x00\xff\xff\x69\x87"))
	f.Add("x.nef", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic\x00\x00\xff\xffmeta"))
	if huge, err := filepath.Glob(filepath.Join(strings.TrimSuffix(samples(f)[0], filepath.Base(samples(f)[0])), "corrupt", "*.jpg")); err == nil {
		for _, path := range huge {
			if data, err := os.ReadFile(path); err == nil && len(data) < 1<<16 {
				f.Add("x.jpg", data)
			}
		}
	}
	for name, data := range raws(f, "05") {
		f.Add(name, data)
	}
	f.Fuzz(func(t *testing.T, name string, data []byte) {
		frame, trouble := readBytes(name, data)
		if trouble.Cause == "" && frame.Taken.IsZero() {
			t.Errorf("a frame without a time, and no cause")
		}
	})
}
