package frames

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/recap"
)

// told is what exiftool 12.57 of Debian says of a file, numbers as numbers. The tags are
// asked for by their groups, so that neither makers' notes nor embedded pictures answer.
type told struct {
	SourceFile              string
	DateTimeOriginal        string
	OffsetTimeOriginal      string
	SubSecTimeOriginal      any
	ImageSize               string
	ExposureTime, FNumber   float64
	ISO                     float64
	FocalLength             float64
	FocalLengthIn35mmFormat float64
	Model                   any
	SerialNumber            any
	LensModel               any
	Rating                  any
	Orientation             float64
	Rotation                float64 // of HEIF, degrees
}

func exiftool(t testing.TB, files ...string) []told {
	t.Helper()
	args := append([]string{"-json", "-n", "-ExifIFD:DateTimeOriginal", "-ExifIFD:OffsetTimeOriginal", "-ExifIFD:SubSecTimeOriginal", "-ImageSize", "-QuickTime:Rotation", "-ExifIFD:ExposureTime", "-ExifIFD:FNumber", "-ExifIFD:ISO",
		"-ExifIFD:FocalLength", "-ExifIFD:FocalLengthIn35mmFormat", "-IFD0:Model", "-ExifIFD:SerialNumber", "-ExifIFD:LensModel", "-XMP-xmp:Rating", "-IFD0:Orientation"}, files...)
	out, err := exec.Command("exiftool", args...).Output()
	if err != nil && len(out) == 0 {
		t.Fatalf("exiftool: %v (Debian package libimage-exiftool-perl)", err)
	}
	var all []told
	if err := json.Unmarshal(out, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

func text(v any) string {
	if v == nil {
		return ""
	}
	b, _ := json.Marshal(v)
	return strings.TrimSpace(strings.Trim(string(b), `"`))
}

// samples are the public pictures that the library's module carries for its own tests.
func samples(t testing.TB) (files []string) {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/bep/imagemeta").Output()
	if err != nil {
		t.Fatal(err)
	}
	root := filepath.Join(strings.TrimSpace(string(out)), "testdata", "images")
	for _, pattern := range []string{"*.jpg", "*.he*", "*.cr2", "*.nef", "*.arw", "*.dng", "goexif/*.jpg", "metadata-extractor/*.jpg", "bep/*.jpg"} {
		more, err := filepath.Glob(filepath.Join(root, pattern))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, more...)
	}
	return files
}

// readable writes the data of pictures that were cut off behind them as TIFF files, which
// exiftool reads; it refuses the rest. It returns what to read for which file.
func readable(t *testing.T, files []string) map[string]string {
	t.Helper()
	dir, out := t.TempDir(), map[string]string{}
	for i, path := range files {
		out[path] = path
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		mark := []byte("Exif\x00\x00")
		if at := bytes.Index(data, mark); strings.Contains(path, "goexif") && at >= 0 {
			delete(out, path)
			out[file(t, dir, fmt.Sprintf("%d.tif", i), data[at+len(mark):])] = path
		}
	}
	return out
}

// TestFieldsAgainstExiftool holds every field of every public sample against exiftool.
func TestFieldsAgainstExiftool(t *testing.T) {
	files := readable(t, samples(t))
	compared, frames := 0, 0
	for _, want := range exiftool(t, slices.Sorted(maps.Keys(files))...) {
		path := files[want.SourceFile]
		f, trouble := ReadFile(path)
		name := filepath.Base(path)
		if trouble.Cause != "" {
			if when := want.DateTimeOriginal; len(when) >= 19 && when > "1990" && !strings.HasPrefix(when, " ") {
				t.Errorf("%s: %s (%v), exiftool knows when it was taken: %s", name, trouble.Cause, trouble.Err, when)
			}
			continue
		}
		frames++
		compared += compare(t, name, f, want)
	}
	t.Logf("%d fields of %d frames among %d files", compared, frames, len(files))
	if frames < 50 || compared < 300 {
		t.Errorf("%d fields of %d frames compared", compared, frames)
	}
}

func compare(t *testing.T, name string, f recap.Frame, want told) (n int) {
	t.Helper()
	when := strings.TrimSpace(want.DateTimeOriginal)
	if digits := strings.TrimRight(text(want.SubSecTimeOriginal), "0"); digits != "" {
		when += "." + digits
	}
	words := map[string][2]string{"taken": {f.Taken.Format("2006:01:02 15:04:05.999999999"), when}, "model": {f.Model, text(want.Model)}, "lens": {f.Lens, text(want.LensModel)}}
	// Of a block of tags alone exiftool says no size, of a DNG that with the borders which are
	// cropped, of an ARW that of its maker's notes.
	if want.ImageSize != "" && !slices.Contains([]string{".dng", ".arw"}, filepath.Ext(name)) {
		words["size"] = [2]string{fmt.Sprint(f.Pixels[0], " ", f.Pixels[1]), want.ImageSize}
	}
	for what, w := range words {
		if n++; w[0] != w[1] {
			t.Errorf("%s: %s %q, exiftool %q", name, what, w[0], w[1])
		}
	}
	if f.Zoned != (want.OffsetTimeOriginal != "") {
		t.Errorf("%s: zone told %v, exiftool %q", name, f.Zoned, want.OffsetTimeOriginal)
	}
	numbers := map[string][2]float64{
		"shutter": {float64(f.Shutter.Or(0)), want.ExposureTime}, "stop": {float64(f.Stop.Or(0)), want.FNumber}, "ISO": {float64(f.ISO.Or(0)), want.ISO},
		"focal": {f.Focal.Or(0).Millimetres(), want.FocalLength}, "focal 35": {f.Focal35.Or(0).Millimetres(), want.FocalLengthIn35mmFormat},
	}
	for what, w := range numbers {
		if n++; math.Abs(w[0]-w[1]) > 1e-4*math.Abs(w[1]) {
			t.Errorf("%s: %s %g, exiftool %g", name, what, w[0], w[1])
		}
	}
	if r, ok := want.Rating.(float64); ok {
		if n++; float64(f.Rating.Or(-9)) != r {
			t.Errorf("%s: rating %v, exiftool %g", name, f.Rating, r)
		}
	}
	if turned := want.Orientation >= 5 || math.Mod(want.Rotation, 180) == 90; f.Portrait != turned {
		t.Errorf("%s: portrait %v, exiftool's orientation %g, rotation %g", name, f.Portrait, want.Orientation, want.Rotation)
	}
	return n
}

// TestFramesThatExiftoolMade writes tags with exiftool and reads them back, sidecars and
// a large ISO among them.
func TestFramesThatExiftoolMade(t *testing.T) {
	dir := t.TempDir()
	path := jpegFile(t, dir, "made.jpg")
	run := func(args ...string) {
		t.Helper()
		if out, err := exec.Command("exiftool", append([]string{"-q", "-overwrite_original"}, args...)...).CombinedOutput(); err != nil {
			t.Fatalf("exiftool: %v\n%s", err, out)
		}
	}
	run("-DateTimeOriginal=2026:11:28 19:04:05", "-OffsetTimeOriginal=-05:00", "-ExposureTime=1/1250", "-FNumber=2.8", "-ISO=65535", "-RecommendedExposureIndex=102400",
		"-FocalLength=200", "-FocalLengthIn35mmFormat=300", "-ExifIFD:SerialNumber=0042", "-LensModel=70-200", "-Model=Body", "-XMP-xmp:Rating=-1", "-Orientation#=6", path)
	f, trouble := ReadFile(path)
	if trouble.Cause != "" {
		t.Fatal(trouble)
	}
	across, known := f.Across()
	if f.Body != "0042" || f.ISO.Or(0) != 102400 || f.Rating.Or(9) != -1 || !f.Portrait || !f.Zoned || f.Pixels != [2]int{16, 8} ||
		math.Abs(f.Shutter.Or(0).Seconds()-1.0/1250) > 1e-9 || !known || math.Abs(across.Millimetres()-12) > 1e-9 || f.Taken.UTC().Hour() != 0 {
		t.Errorf("%+v, %v across", f, across)
	}
	run("-XMP-xmp:Rating=4", "-o", filepath.Join(dir, "made.xmp"))
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	found, err := Read(t.Context(), []string{dir}, nil)
	if err != nil || len(found.Frames) != 1 || found.Frames[0].Rating.Or(9) != 4 {
		t.Errorf("%+v, %v: the sidecar's rating is not taken", found, err)
	}
	if after, err := os.ReadFile(path); err != nil || string(after) != string(before) {
		t.Errorf("the picture was changed (%v)", err)
	}
}

// TestRawKindsAgainstExiftool has exiftool read the raw files that this package's tests
// build by hand, each a file of its kind to it, with parts of a second with and without
// leading zeros; and files in which exiftool wrote these.
func TestRawKindsAgainstExiftool(t *testing.T) {
	dir := t.TempDir()
	var files, made []string
	for k, second := range []string{"05", "5", "050", "00", "000001", "99"} {
		for name, data := range raws(t, second) {
			files = append(files, file(t, dir, fmt.Sprint(k, name), data))
		}
	}
	for _, path := range samples(t) {
		if base := filepath.Base(path); base == "mushroom.jpg" || base == "iphone.heic" {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			made = append(made, file(t, dir, base, data))
		}
	}
	write := append([]string{"-q", "-overwrite_original", "-ExifIFD:DateTimeOriginal=2026:11:28 12:00:00", "-ExifIFD:SubSecTimeOriginal=007"}, made...)
	if out, err := exec.Command("exiftool", write...).CombinedOutput(); err != nil || len(made) != 2 {
		t.Fatalf("%d files: %v\n%s", len(made), err, out)
	}
	said := exiftool(t, append(files, made...)...)
	if len(said) != 6*4+2 {
		t.Errorf("exiftool reads %d files", len(said))
	}
	for _, want := range said {
		f, trouble := ReadFile(want.SourceFile)
		if trouble.Cause != "" || text(want.SubSecTimeOriginal) == "" {
			t.Errorf("%+v, exiftool %+v", trouble, want)
		}
		compare(t, filepath.Base(want.SourceFile), f, want)
	}
}
