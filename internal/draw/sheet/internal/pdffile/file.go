// Package pdffile writes the bones of a PDF 1.7 file (ISO 32000-1): numbered
// objects, packed streams, the cross-reference table, embedded TrueType fonts,
// pictures, bookmarks and metadata. It knows no drawing.
package pdffile

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"strconv"
)

// Ref is the number of an object.
type Ref int

// String returns the reference as it stands in a file: "12 0 R".
func (r Ref) String() string { return strconv.Itoa(int(r)) + " 0 R" }

// File gathers objects. The zero File is empty and ready.
type File struct {
	objects [][]byte
	zip     *zlib.Writer // kept: its tables are large
}

// Reserve returns the number for an object that is set later.
func (f *File) Reserve() Ref {
	f.objects = append(f.objects, nil)
	return Ref(len(f.objects))
}

// Set gives a reserved number its object.
func (f *File) Set(r Ref, body string) { f.objects[r-1] = []byte(body) }

// Add adds an object.
func (f *File) Add(body string) Ref {
	r := f.Reserve()
	f.Set(r, body)
	return r
}

// Stream adds a packed stream; dict holds further entries, such as "/Type /XObject".
func (f *File) Stream(dict string, data []byte) Ref {
	var z bytes.Buffer
	if f.zip == nil {
		f.zip = zlib.NewWriter(&z)
	} else {
		f.zip.Reset(&z)
	}
	f.zip.Write(data) // a bytes.Buffer does not fail
	f.zip.Close()
	return f.raw(dict+" /Filter /FlateDecode", z.Bytes())
}

// PlainStream adds a stream that is not packed, as metadata should be.
func (f *File) PlainStream(dict string, data []byte) Ref { return f.raw(dict, data) }

func (f *File) raw(dict string, data []byte) Ref {
	r := f.Reserve()
	b := fmt.Appendf(nil, "<<%s /Length %d>>\nstream\n", dict, len(data))
	b = append(b, data...)
	f.objects[r-1] = append(b, "\nendstream"...)
	return r
}

// Bytes returns the whole file. The file's identifier is made from its content,
// so that the same objects give the same bytes.
func (f *File) Bytes(root, info Ref) []byte {
	size := 1 << 10
	for _, o := range f.objects {
		size += len(o) + 40
	}
	b := make([]byte, 0, size)
	// Four bytes above 127 tell transfer programs that the file is binary.
	b = append(b, "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"...)
	at := make([]int, len(f.objects))
	for i, o := range f.objects {
		at[i] = len(b)
		b = strconv.AppendInt(b, int64(i+1), 10)
		b = append(b, " 0 obj\n"...)
		b = append(b, o...)
		b = append(b, "\nendobj\n"...)
	}
	start := len(b)
	b = fmt.Appendf(b, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, n := range at {
		b = fmt.Appendf(b, "%010d 00000 n \n", n)
	}
	id := sha256.Sum256(b[:start])
	return fmt.Appendf(b, "trailer\n<</Size %d /Root %v /Info %v /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(at)+1, root, info, id[:16], id[:16], start)
}
