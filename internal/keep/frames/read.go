package frames

import (
	"bytes"
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
	return ReadFrom(path, f, info.Size())
}

// picture is a file that is read.
type picture struct {
	in     *bounded
	size   int64 // bytes
	found  tags
	pixels [2]int // across and down as stored, by how the file is built
	built  [2]int // the same by the library, of HEIF as the picture is to be turned
	format imagemeta.ImageFormat
	blocks []int64 // where blocks of TIFF begin whose first directory leads to that of how it was taken
	own    []int64 // where those begin whose first directory is that itself
	exif   bool    // the block that is decoded is one of those
}

// ReadFrom reads what a picture says from its bytes, of which there are so many; the first
// ones of a file suffice, where its tags stand before the picture. One that does not say when
// it was taken tells the rest all the same.
func ReadFrom(path string, r io.ReaderAt, size int64) (recap.Frame, Trouble) {
	fail := func(c Cause, err error) (recap.Frame, Trouble) { return recap.Frame{}, Trouble{path, c, err} }
	p := &picture{in: &bounded{r: r, left: mostRead}, size: size, found: tags{}}
	head := make([]byte, headBytes)
	n, err := p.in.ReadAt(head, 0)
	if err != nil && !errors.Is(err, io.EOF) {
		return fail(Unreadable, err)
	}
	how, why := kind(head[:n], path)
	if how == nil {
		return fail(why, nil)
	}
	err = guarded(p, how)
	if _, told := p.found[tagSecond]; told {
		p.found[tagSecond] = p.second()
	}
	frame := p.found.frame(path)
	p.shape(&frame)
	switch failed := p.in.failed; {
	case errors.Is(failed, errTooMuch):
		return fail(TooMuch, nil)
	case failed != nil:
		return fail(Unreadable, failed)
	case errors.Is(err, errNoPicture):
		return fail(NoPicture, nil)
	case err != nil && frame.Taken.IsZero(): // damage behind what was read does not matter
		return fail(Broken, err)
	case frame.Taken.IsZero():
		return frame, Trouble{path, NoTime, nil}
	}
	return frame, Trouble{}
}

// guarded reads a picture. A panic of the library is an error: what it reads comes from
// anywhere.
func guarded(p *picture, how func(*picture) error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("not understood: %v", r)
		}
	}()
	return how(p)
}

// decode has the library tell the tags of a picture, or of a block within one.
func (p *picture) decode(in io.ReadSeeker, format imagemeta.ImageFormat) error {
	result, err := imagemeta.Decode(imagemeta.Options{
		R: in, ImageFormat: format, Sources: imagemeta.EXIF | imagemeta.XMP | imagemeta.CONFIG,
		LimitNumTags: mostTags, LimitTagSize: mostTag,
		ShouldHandleTag: func(t imagemeta.TagInfo) bool {
			if p.exif && t.Namespace == directoryOwn {
				t.Namespace = directoryTaken
			}
			return t.Source == imagemeta.EXIF && wanted(t)
		},
		HandleTag: p.found.take,
		HandleXMP: func(r io.Reader) error { return p.found.xmp(r, ratings()) },
	})
	if p.built == [2]int{} {
		p.built, p.format = [2]int{result.ImageConfig.Width, result.ImageConfig.Height}, format
	}
	return err
}

// shape says a picture's size and whether it is to be turned, where how its file is built
// knows that better than its tags: a JPEG may have been made smaller since, and HEIF may be
// turned without a tag.
func (p *picture) shape(f *recap.Frame) {
	told := f.Pixels != [2]int{}
	switch {
	case p.pixels[0] > 0 && p.pixels[1] > 0:
		f.Pixels = p.pixels
	case p.built[0] <= 0 || p.built[1] <= 0:
	case p.format == imagemeta.HEIF && told:
		f.Portrait = f.Portrait || (p.built[0] < p.built[1]) != (f.Pixels[0] < f.Pixels[1])
	case p.format == imagemeta.HEIF:
		f.Pixels, f.Portrait = p.built, false
	case p.format == imagemeta.JPEG || !told:
		f.Pixels = p.built
	}
}

// second returns the digits behind the second at which the picture was taken.
func (p *picture) second() string {
	if p.in.exif > 0 {
		p.blocks = append(p.blocks, p.in.exif)
	}
	for _, at := range p.blocks {
		if b, err := openBlock(p.in, at); err == nil {
			if digits := b.second(int64(b.number(b.first, rowExif))); digits != "" {
				return digits
			}
		}
	}
	for _, at := range p.own {
		if b, err := openBlock(p.in, at); err == nil {
			return b.second(b.first)
		}
	}
	return ""
}

// bounded is a file of which so many bytes are read at most. It remembers what failed, and
// where the first block of Exif began in what was read.
type bounded struct {
	r      io.ReaderAt
	left   int64
	failed error
	exif   int64 // 0: none so far
}

func (b *bounded) ReadAt(p []byte, off int64) (int, error) {
	if b.left < int64(len(p)) {
		b.failed = errTooMuch
		return 0, errTooMuch
	}
	n, err := b.r.ReadAt(p, off)
	b.left -= int64(n)
	if err != nil && !errors.Is(err, io.EOF) {
		b.failed = err
	}
	for _, order := range [...]string{"II", "MM"} {
		if i := bytes.Index(p[:n], []byte(exifMark+order)); i >= 0 && b.exif == 0 {
			b.exif = off + int64(i+len(exifMark))
		}
	}
	return n, err
}

// exifMark stands before a block of Exif.
const exifMark = "Exif\x00\x00"

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
