package frames

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/bep/imagemeta"

	"example.org/rinkpane/internal/decide/recap"
)

// Bounds of what is read of one file: more is no camera's.
const (
	mostRead = 16 << 20 // bytes
	mostTags = 2000
	mostTag  = 4096 // bytes
)

// ReadFile returns what one picture says, and why not when it cannot be read; the cause
// is "" with a frame.
func ReadFile(path string) (recap.Frame, Trouble) {
	fail := func(c Cause, err error) (recap.Frame, Trouble) { return recap.Frame{}, Trouble{path, c, err} }
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return fail(Unreadable, err)
	case !info.Mode().IsRegular(): // opening a pipe would wait
		return fail(NoFile, nil)
	case info.Size() == 0:
		return fail(Empty, nil)
	}
	f, err := os.Open(path)
	if err != nil {
		return fail(Unreadable, err)
	}
	defer f.Close()
	return read(path, f)
}

// read reads what a picture says from its bytes.
func read(path string, r io.ReadSeeker) (recap.Frame, Trouble) {
	fail := func(c Cause, err error) (recap.Frame, Trouble) { return recap.Frame{}, Trouble{path, c, err} }
	head := make([]byte, headBytes)
	n, err := io.ReadFull(r, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return fail(Unreadable, err)
	}
	format, ok := kind(head[:n], path)
	if !ok {
		return fail(NoPicture, nil)
	}
	if _, err := r.Seek(0, io.SeekStart); err != nil {
		return fail(Unreadable, err)
	}
	in := &bounded{r: r, left: mostRead}
	found := tags{}
	result, err := decode(in, format, found)
	frame := found.frame(path)
	if frame.Pixels == [2]int{} {
		frame.Pixels = [2]int{result.ImageConfig.Width, result.ImageConfig.Height}
	}
	switch failed := in.failed; {
	case errors.Is(failed, errTooMuch):
		return fail(TooMuch, nil)
	case failed != nil:
		return fail(Unreadable, failed)
	case err != nil && frame.Taken.IsZero(): // damage behind what was read does not matter
		return fail(Broken, err)
	case frame.Taken.IsZero():
		return fail(NoTime, nil)
	}
	return frame, Trouble{}
}

// decode hands a picture's tags to found. A panic of the library is an error: what it
// reads comes from anywhere.
func decode(in io.ReadSeeker, format imagemeta.ImageFormat, found tags) (result imagemeta.DecodeResult, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("not understood: %v", r)
		}
	}()
	return imagemeta.Decode(imagemeta.Options{
		R: in, ImageFormat: format, Sources: imagemeta.EXIF | imagemeta.XMP | imagemeta.CONFIG,
		LimitNumTags: mostTags, LimitTagSize: mostTag,
		ShouldHandleTag: func(t imagemeta.TagInfo) bool { return t.Source == imagemeta.EXIF && wanted(t) },
		HandleTag:       found.take,
		HandleXMP:       func(r io.Reader) error { return found.rating(r) },
	})
}

// bounded is a reader that gives so many bytes at most, and remembers what failed.
type bounded struct {
	r      io.ReadSeeker
	left   int64
	failed error
}

func (b *bounded) Read(p []byte) (int, error) {
	if b.left <= 0 {
		b.failed = errTooMuch
		return 0, io.ErrUnexpectedEOF
	}
	n, err := b.r.Read(p[:min(int64(len(p)), b.left)])
	b.left -= int64(n)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		b.failed = err
	}
	return n, err
}

func (b *bounded) Seek(offset int64, whence int) (int64, error) { return b.r.Seek(offset, whence) }

// unlinked says why a link leads to no file, "" when it leads to one.
func unlinked(path string) (Cause, error) {
	target, err := filepath.EvalSymlinks(path)
	if err != nil { // in a circle, or to nothing
		return LinkLost, err
	}
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return LinkLost, err
	case err != nil:
		return Unreadable, err
	case info.IsDir():
		return LinkFolder, nil
	}
	return "", nil
}
