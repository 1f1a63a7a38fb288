package frames

import (
	"fmt"
	"os/exec"
	"testing"
	"time"
)

// BenchmarkTenThousand reads 10,000 small JPEG files, and has exiftool read the same tags
// of the same files in one run once, for the ratio that it reports.
func BenchmarkTenThousand(b *testing.B) {
	const n = 10_000
	dir := b.TempDir()
	for i := range n {
		file(b, dir, fmt.Sprintf("%05d.jpg", i), taken(b, noon.Add(time.Duration(i)*time.Second)))
	}
	begin := time.Now()
	out, err := exec.Command("exiftool", "-q", "-csv", "-n", "-DateTimeOriginal", "-OffsetTimeOriginal", "-ExposureTime", "-FNumber", "-ISO", "-FocalLength",
		"-FocalLengthIn35mmFormat", "-Model", "-SerialNumber", "-LensModel", "-Rating", "-Orientation", "-ImageSize", dir).Output()
	if err != nil || len(out) < n*20 {
		b.Fatalf("exiftool: %v, %d bytes", err, len(out))
	}
	theirs := time.Since(begin)
	b.ReportAllocs()
	for b.Loop() {
		found, err := Read(b.Context(), []string{dir}, nil)
		if err != nil || len(found.Frames) != n {
			b.Fatalf("%d frames, %v", len(found.Frames), err)
		}
	}
	b.ReportMetric(theirs.Seconds(), "exiftool-s")
	b.ReportMetric(theirs.Seconds()/(b.Elapsed().Seconds()/float64(b.N)), "times-faster")
}
