package label

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Labels on every paper, printed and read back by zbar, from Debian: each cover's code
// says what it was given, on as many sheets as it takes.
func TestLabelsReadBackByZbar(t *testing.T) {
	var labels []Label
	var want []string
	for n := range 12 {
		l := Label{Cover: fmt.Sprintf("B%d-%d", n/4+1, n%4+1), Hole: fmt.Sprintf("B%d", n/4+1), Arena: "Tidewater Pavilion"}
		l.Says = Address("https://desk.example", "tidewater", l.Cover)
		labels, want = append(labels, l), append(want, l.Says)
	}
	slices.Sort(want)
	for _, p := range Papers() {
		pdf, err := PDF(t.Context(), labels, p, "test")
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Fields(zbar(t, singly(t, pdf, p, len(labels))))
		if slices.Sort(got); !slices.Equal(got, want) {
			t.Errorf("%s: read %d of %d labels: %v", p.Name, len(got), len(want), got)
		}
	}
}

// dpi is how finely the printed labels are looked at: less than a phone's camera does.
const dpi = 200

// singly prints a PDF and writes each label as a picture of its own, as a phone sees it.
func singly(t *testing.T, pdf []byte, p Paper, labels int) (files []string) {
	t.Helper()
	folder := t.TempDir()
	path := filepath.Join(folder, "labels.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", fmt.Sprint(dpi), "-png", path, filepath.Join(folder, "sheet")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v: %s", err, out)
	}
	sheets, err := filepath.Glob(filepath.Join(folder, "sheet*.png"))
	if err != nil || len(sheets) != (labels+p.columns*p.row-1)/(p.columns*p.row) {
		t.Fatalf("%s: %d sheets, %v", p.Name, len(sheets), err)
	}
	for i := range labels {
		n := i % (p.columns * p.row)
		px := func(mm float64) int { return int(mm / 25.4 * dpi) }
		x, y := p.x+float64(n%p.columns)*p.across, p.y+float64(n/p.columns)*p.h
		whole := read(t, sheets[i/(p.columns*p.row)]).(*image.RGBA)
		one := whole.SubImage(image.Rect(px(x), px(y), px(x+p.w), px(y+p.h)))
		var b bytes.Buffer
		if err := png.Encode(&b, one); err != nil {
			t.Fatal(err)
		}
		files = append(files, filepath.Join(folder, fmt.Sprintf("label-%d.png", i)))
		if err := os.WriteFile(files[i], b.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

func read(t *testing.T, path string) image.Image {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// zbar reads the QR codes of pictures.
func zbar(t *testing.T, files []string) string {
	t.Helper()
	out, err := exec.Command("zbarimg", append([]string{"--quiet", "--raw", "-Sdisable", "-Sqrcode.enable"}, files...)...).Output()
	if err != nil {
		t.Fatalf("zbarimg (Debian's zbar-tools): %v", err)
	}
	return string(out)
}

func TestAddressesAndPapers(t *testing.T) {
	if got := Address("", "east", "B1-1"); got != "east B1-1" {
		t.Error(got)
	}
	if got := Address("https://d.example/", "east", "B 1#1"); got != "https://d.example/phone/east#B%201%231" {
		t.Error(got)
	}
	if _, err := ParsePaper("a4-7"); err == nil || !strings.Contains(err.Error(), "write a4-24, a4-14") {
		t.Error(err)
	}
	if _, err := Sheets([]Label{{Cover: "B1", Says: strings.Repeat("x", 5000)}}, Papers()[0]); err == nil {
		t.Error("a code of 5000 letters")
	}
}
