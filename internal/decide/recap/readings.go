package recap

import (
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Readings is what was read of a game's frames, as it is handed on without the pictures.
type Readings struct {
	Frames []Frame // in the order in which they were taken, then by name
	Unread []Unread
}

// Limits of a file of readings. A frame takes some 110 bytes.
const (
	MaxReadings = 4_000_000 // bytes
	MaxFrames   = 40_000
)

// readingColumns are those of a file of readings, in its order; units stand in the names.
// A line with a cause under unread tells of files that are no frames: the first of them
// under file, how many under files.
func readingColumns() []string {
	return []string{"file", "taken", "body", "model", "lens", "focal_mm", "focal35_mm", "shutter_s", "stop", "iso", "rating", "width_px", "height_px", "portrait", "unread", "files"}
}

// The two ways in which a file tells when a frame was taken: by the camera's clock alone,
// or with its zone.
const (
	clockForm = "2006-01-02T15:04:05.999999999"
	zonedForm = time.RFC3339Nano
)

// CSV writes the readings, a frame a line, as [ReadReadings] takes them. Control characters
// in names are left out. The error is w's.
func (r Readings) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	lines := [][]string{readingColumns()}
	for _, f := range r.Frames {
		lines = append(lines, f.cells())
	}
	for _, u := range r.Unread {
		line := make([]string, len(readingColumns()))
		line[0], line[len(line)-2], line[len(line)-1] = plain(u.First), plain(u.Cause), strconv.Itoa(u.Files)
		lines = append(lines, line)
	}
	return out.WriteAll(lines)
}

func (f Frame) cells() []string {
	taken, portrait := f.Taken.Format(clockForm), ""
	if f.Zoned {
		taken = f.Taken.Format(zonedForm)
	}
	if f.Portrait {
		portrait = "yes"
	}
	return []string{plain(f.File), taken, plain(f.Body), plain(f.Model), plain(f.Lens),
		number(f.Focal, unit.Length.Millimetres), number(f.Focal35, unit.Length.Millimetres), number(f.Shutter, unit.Shutter.Seconds),
		number(f.Stop, func(n unit.Stop) float64 { return float64(n) }), number(f.ISO, func(s unit.ISO) float64 { return float64(s) }),
		number(f.Rating, func(n int) float64 { return float64(n) }), pixels(f.Pixels[0]), pixels(f.Pixels[1]), portrait, "", ""}
}

// plain is a text that a cell may hold.
func plain(s string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd")))
}

func number[T any](m unit.Maybe[T], as func(T) float64) string {
	v, ok := m.Get()
	if !ok {
		return ""
	}
	return strconv.FormatFloat(as(v), 'g', digits, 64)
}

// digits of a number are enough for every value that a camera writes, and leave out what
// the conversion to metres adds.
const digits = 12

func pixels(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// AreReadings reports whether a text begins as a file of readings does.
func AreReadings(text []byte) bool {
	head, _, _ := strings.Cut(string(text[:min(len(text), longestHead)]), "\n")
	return strings.Contains(head, "file") && strings.Contains(head, "taken")
}

// longestHead bounds the first line of a file of readings, in bytes.
const longestHead = 1000

// ReadReadings reads a file of readings; name stands for it in messages. Bad lines are
// named with line, column, value and cure, up to 20 of them.
func ReadReadings(name string, in io.Reader) (Readings, error) {
	t, err := form.ReadTable(name, in, MaxReadings, form.Columns{Must: []string{"file", "taken"}, May: readingColumns(), Only: true, Short: true, Dividers: ";\t"})
	if err != nil {
		return Readings{}, err
	}
	var out Readings
	err = t.Each(func(row form.Row) error {
		if cause := row.Text("unread"); cause != "" {
			u, err := unreadOf(row)
			out.Unread = append(out.Unread, u)
			return err
		}
		f, err := frameOf(row)
		switch {
		case err != nil:
			return err
		case len(out.Frames) == MaxFrames:
			return row.Bad("file", "more frames than "+strconv.Itoa(MaxFrames)+"; split the file")
		}
		out.Frames = append(out.Frames, f)
		return nil
	})
	if err != nil {
		return Readings{}, err
	}
	out.sort()
	return out, nil
}

// With adds other readings: a frame of the same body, time and name is the other's, which
// was read later.
func (r Readings) With(other Readings) Readings {
	type key struct{ body, taken, file string }
	of := func(f Frame) key { return key{f.Body, f.Taken.Format(zonedForm), base(f.File)} }
	again := map[key]bool{}
	for _, f := range other.Frames {
		again[of(f)] = true
	}
	out := Readings{Frames: slices.Clone(other.Frames), Unread: slices.Clone(other.Unread)}
	for _, f := range r.Frames {
		if !again[of(f)] {
			out.Frames = append(out.Frames, f)
		}
	}
	for _, u := range r.Unread {
		if !slices.Contains(out.Unread, u) {
			out.Unread = append(out.Unread, u)
		}
	}
	out.sort()
	return out
}

func (r Readings) sort() { slices.SortStableFunc(r.Frames, Frame.Compare) }

func unreadOf(row form.Row) (u Unread, err error) {
	u = Unread{Cause: row.Text("unread"), First: row.Text("file"), Files: 1}
	if row.Text("files") != "" {
		u.Files, err = form.Cell(row, "files", whole(1, math.MaxInt32))
	}
	return u, err
}

// frameOf reads a line; a blank cell is what the picture does not say.
func frameOf(row form.Row) (f Frame, err error) {
	cell := func(column string, read func(string) error) {
		if s := row.Text(column); err == nil && s != "" {
			if e := read(s); e != nil {
				err = row.Wrong(column, e.Error())
			}
		}
	}
	if f.File, err = form.Cell(row, "file", form.Line); err != nil {
		return f, err
	}
	if f.Taken, f.Zoned, err = takenAt(row); err != nil {
		return f, err
	}
	text := func(to *string) func(string) error {
		return func(s string) (err error) { *to, err = form.Line(s); return err }
	}
	cell("model", text(&f.Model))
	cell("lens", text(&f.Lens))
	f.Body = f.Model
	cell("body", text(&f.Body))
	cell("focal_mm", known(&f.Focal, longestFocal, func(mm float64) unit.Length { return unit.Length(mm) * unit.Millimetre }))
	cell("focal35_mm", known(&f.Focal35, longestFocal, func(mm float64) unit.Length { return unit.Length(mm) * unit.Millimetre }))
	cell("shutter_s", known(&f.Shutter, longestShutter, func(s float64) unit.Shutter { return unit.Shutter(s) }))
	cell("stop", known(&f.Stop, smallestStop, func(n float64) unit.Stop { return unit.Stop(n) }))
	cell("iso", known(&f.ISO, highestISO, func(s float64) unit.ISO { return unit.ISO(s) }))
	cell("rating", func(s string) error {
		n, err := whole(-1, 5)(s)
		f.Rating = unit.Known(n)
		return err
	})
	for k, column := range [...]string{"width_px", "height_px"} {
		cell(column, func(s string) (err error) { f.Pixels[k], err = whole(1, math.MaxInt32)(s); return err })
	}
	cell("portrait", func(s string) (err error) { f.Portrait, err = form.YesNo(s); return err })
	return f, err
}
