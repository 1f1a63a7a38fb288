package custody_test

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/custody"
)

func picture() image.Image {
	m := image.NewRGBA(image.Rect(0, 0, 40, 30))
	for i := range m.Pix {
		m.Pix[i] = byte(i * 7)
	}
	return m
}

func asJPEG(t testing.TB) []byte {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, picture(), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func segment(marker byte, body string) []byte {
	return append([]byte{0xff, marker, byte((len(body) + 2) >> 8), byte(len(body) + 2)}, body...)
}

// What cameras write: who, where and when, a thumbnail, and which side is up.
const exifOnItsSide = "Exif\x00\x00II*\x00\x08\x00\x00\x00\x02\x00\x0f\x01\x02\x00\x06\x00\x00\x00SECR\x12\x01\x03\x00\x01\x00\x00\x00\x06\x00\x00\x00\x00\x00\x00\x00GPS SECRET"

func TestMetadataIsStripped(t *testing.T) {
	plain := asJPEG(t)
	told := slices.Concat(plain[:2], segment(0xe1, exifOnItsSide), segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00SECRET"), segment(0xfe, "SECRET"),
		segment(0xed, "SECRET"), plain[2:], []byte("SECRET after the end"))
	p, err := custody.PhotoOf(told)
	if err != nil || p.Kind != "image/jpeg" || bytes.Contains(p.Data, []byte("SECRET")) {
		t.Fatalf("%s, %v, %d bytes", p.Kind, err, len(p.Data))
	}
	if !bytes.Contains(p.Data, []byte("\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06")) {
		t.Error("the photo lost which side is up")
	}
	samePicture(t, plain, p.Data)
	if again, err := custody.PhotoOf(p.Data); err != nil || again.Key() != p.Key() {
		t.Errorf("stripped twice it is another: %v", err)
	}

	var b bytes.Buffer
	if err := png.Encode(&b, picture()); err != nil {
		t.Fatal(err)
	}
	chunk := append(binary.BigEndian.AppendUint32(nil, 12), "tEXtWho\x00 SECRET!"...)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	told = slices.Concat(b.Bytes()[:33], chunk, b.Bytes()[33:], []byte("SECRET"))
	if p, err = custody.PhotoOf(told); err != nil || p.Kind != "image/png" || !bytes.Equal(p.Data, b.Bytes()) {
		t.Errorf("PNG: %v, %d bytes, want %d", err, len(p.Data), b.Len())
	}
}

func samePicture(t *testing.T, a, b []byte) {
	t.Helper()
	x, err1 := jpeg.Decode(bytes.NewReader(a))
	y, err2 := jpeg.Decode(bytes.NewReader(b))
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	for i := range 40 * 30 {
		if x, y := color.NRGBAModel.Convert(x.At(i%40, i/40)), color.NRGBAModel.Convert(y.At(i%40, i/40)); x != y {
			t.Fatalf("pixel %d is %v, was %v", i, y, x)
		}
	}
}

func TestWhatIsNoPhoto(t *testing.T) {
	whole := asJPEG(t)
	for want, file := range map[string][]byte{
		"at most 8 MB":         append(slices.Clone(whole), make([]byte, 10<<20)...),
		"send a JPEG or a PNG": []byte("<svg onload=alert(1)>"),
		"JPEG or a PNG":        nil,
		"take it again":        whole[:len(whole)-2],
		"pixels":               huge(t),
	} {
		if _, err := custody.PhotoOf(file); !oneLine(err, want) {
			t.Errorf("%s: %v", want, err)
		}
	}
}

// huge is a small file that claims 60,000 x 60,000 pixels.
func huge(t *testing.T) []byte {
	var b bytes.Buffer
	if err := png.Encode(&b, picture()); err != nil {
		t.Fatal(err)
	}
	file := b.Bytes()
	copy(file[16:24], "\x00\x00\xea\x60\x00\x00\xea\x60")
	binary.BigEndian.PutUint32(file[29:], crc32.ChecksumIEEE(file[12:29]))
	return file
}

// Whatever is sent, it is a photo without metadata or an error, and no panic.
func FuzzPhotoOf(f *testing.F) {
	f.Add(asJPEG(f))
	f.Add([]byte("\x89PNG\r\n\x1a\n"))
	f.Fuzz(func(t *testing.T, file []byte) {
		if p, err := custody.PhotoOf(file); err == nil && (len(p.Data) > len(file)+64 || strings.Contains(string(p.Data), "http://ns.adobe.com")) {
			t.Errorf("%d bytes of %d", len(p.Data), len(file))
		}
	})
}
