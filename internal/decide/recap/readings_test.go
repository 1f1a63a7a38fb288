package recap_test

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

func written(t testing.TB, r recap.Readings) string {
	t.Helper()
	var b strings.Builder
	if err := r.CSV(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func readBack(t testing.TB, text string) recap.Readings {
	t.Helper()
	r, err := recap.ReadReadings("card.csv", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// What is handed on without the pictures is all that an answer needs of them.
func TestReadingsComeBackAsTheyWere(t *testing.T) {
	full, zoned, bare := frame("0042", "19:10:00"), frame("0042", "19:10:01"), recap.Frame{File: "b, c.jpg", Taken: at("19:11:00")}
	full.Model, full.Lens, full.Focal35, full.Rating, full.Portrait = "Model X", "70-200 mm f/2.8", unit.Known(300*unit.Millimetre), unit.Known(-1), true
	full.Taken = full.Taken.Add(70 * time.Millisecond)
	zoned.Taken, zoned.Zoned, zoned.Shutter = zoned.Taken.In(time.FixedZone("", 3600)), true, unit.Known(unit.Shutter(1.0/3))
	r := recap.Readings{Frames: []recap.Frame{full, bare, zoned}, Unread: []recap.Unread{{Cause: "empty", Files: 2, First: "x.jpg"}}}
	text := written(t, r)
	const want = `file,taken,body,model,lens,focal_mm,focal35_mm,shutter_s,stop,iso,rating,width_px,height_px,portrait,unread,files
004219:10:00,2026-11-28T19:10:00.07,0042,Model X,70-200 mm f/2.8,200,300,0.001,2.8,3200,-1,6000,4000,yes,,
"b, c.jpg",2026-11-28T19:11:00,,,,,,,,,,,,,,
004219:10:01,2026-11-28T20:10:01+01:00,0042,,,200,,0.333333333333,2.8,3200,,6000,4000,,,
x.jpg,,,,,,,,,,,,,,empty,2
`
	if text != want {
		t.Errorf("written as\n%s\nwant\n%s", text, want)
	}
	back := readBack(t, text)
	if again := written(t, back); again != strings.Join([]string{line(text, 0), line(text, 1), line(text, 3), line(text, 2), line(text, 4)}, "") {
		t.Errorf("written again, in the order of time:\n%s", again)
	}
	if got := back.Frames[0]; !reflect.DeepEqual(got, full) {
		t.Errorf("came back as %+v\nwant %+v", got, full)
	}
	if got := back.Frames[1]; !got.Zoned || !got.Taken.Equal(zoned.Taken) {
		t.Errorf("its zone came back as %v, %v", got.Zoned, got.Taken)
	}
}

func line(text string, n int) string { return strings.SplitAfter(text, "\n")[n] }

// Two cards of a game are one; a card that is read again is not counted twice.
func TestReadingsAreJoined(t *testing.T) {
	a, b, rated := frame("0042", "19:10:00"), frame("0077", "19:05:00"), frame("0042", "19:10:00")
	rated.Rating, rated.File = unit.Known(3), "elsewhere/"+rated.File
	got := recap.Readings{Frames: []recap.Frame{a}}.With(recap.Readings{Frames: []recap.Frame{rated, b}})
	if len(got.Frames) != 2 || got.Frames[0].Body != "0077" || got.Frames[1].Rating.Or(0) != 3 {
		t.Errorf("joined: %+v", got.Frames)
	}
}

// Every fault of a file is answered with line, column, value and cure; all of them at once.
func TestBadReadingsAreRefused(t *testing.T) {
	const head = "file,taken,focal_mm,shutter_s,iso,rating,width_px,portrait\n"
	for text, want := range map[string]string{
		"":                                      "card.csv:1: empty; the first line names the columns: file,taken",
		"file\nx\n":                             `card.csv:1: no column taken among "file"`,
		"file,take\n":                           `card.csv:1:6: take: no such column`,
		head + "a.jpg,28.11.2026 19:13,,,,,,\n": `card.csv:2:7: taken: "28.11.2026 19:13": no time of a frame; write 2026-11-28T19:13:00`,
		head + "a.jpg,1980-01-01T00:00:00,,,,,,\n":                 `card.csv:2:7: taken: "1980-01-01T00:00:00": no time of a frame`,
		head + ",2026-11-28T19:13:00,,,,,,\n":                      `card.csv:2:1: file: blank`,
		head + "a.jpg,2026-11-28T19:13:00,-70,,,,,\n":              `card.csv:2:27: focal_mm: "-70": write a number above 0 and at most 10000`,
		head + "a.jpg,2026-11-28T19:13:00,,1/500,,,,\n":            `card.csv:2:28: shutter_s: "1/500": write a number above 0`,
		head + "a.jpg,2026-11-28T19:13:00,,,NaN,,,\n":              `card.csv:2:29: iso: "NaN": write a number above 0`,
		head + "a.jpg,2026-11-28T19:13:00,,,,7,,\n":                `card.csv:2:30: rating: "7": write a whole number from -1 to 5`,
		head + "a.jpg,2026-11-28T19:13:00,,,,,6e3,\n":              `card.csv:2:31: width_px: "6e3": write a whole number from 1`,
		head + "a.jpg,2026-11-28T19:13:00,,,,,,turned\n":           `card.csv:2:32: portrait: "turned"`,
		head + "a.jpg,2026-11-28T19:13:00,,,,,,,,\n":               `has 10 columns, the first line 8`,
		head + "a.jpg,2026-11-28T19:13:00,\"\x00\",,,,,\n":         `no text`,
		"file,taken,unread,files\na.jpg,,empty,none\n":             `card.csv:2:14: files: "none": write a whole number from 1`,
		head + "a.jpg,x,,,,,,\nb.jpg,2026-11-28T19:13:00,x,,,,,\n": `card.csv:3:27: focal_mm: "x"`,
	} {
		_, err := recap.ReadReadings("card.csv", strings.NewReader(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q:\n got %v\nwant %s", text, err, want)
		}
	}
}

func TestReadingsHaveALimit(t *testing.T) {
	var long strings.Builder
	long.WriteString("file,taken\n")
	for i := range recap.MaxFrames + 1 {
		fmt.Fprintf(&long, "%d,2026-11-28T19:13:00\n", i)
	}
	if _, err := recap.ReadReadings("card.csv", strings.NewReader(long.String())); err == nil || !strings.Contains(err.Error(), "card.csv:40002:1: file: \"40000\": more frames than 40000; split the file") {
		t.Errorf("a frame too many: %v", err)
	}
	wide := "file,taken\n" + strings.Repeat(strings.Repeat("x", 1000)+",2026-11-28T19:13:00\n", recap.MaxReadings/1000)
	if _, err := recap.ReadReadings("card.csv", strings.NewReader(wide)); err == nil || !strings.Contains(err.Error(), "larger than") {
		t.Errorf("too many bytes: %v", err)
	}
}

// Whatever is read comes back the same when it is written and read again, or is an error
// that names the file.
func FuzzReadReadings(f *testing.F) {
	full := frame("0042", "19:10:00")
	full.Zoned, full.Rating = true, unit.Known(4)
	f.Add(written(f, recap.Readings{Frames: []recap.Frame{full}, Unread: []recap.Unread{{Cause: "empty", Files: 2, First: "x.jpg"}}}))
	f.Add("\ufefffile;taken;stop\na.jpg;2026-11-28T19:13:00Z;2.8\n")
	f.Add("taken,file,body,model\n2026-11-28T19:13:00+24:00,\" a\"\"b\n c\",,\u202e\n")
	f.Add("file,taken,unread\n#1,2026-11-28T19:13:00\n,,link-lost\n")
	f.Add("file\ttaken\n\t2026-11-28T19:13:00.5\n")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := recap.ReadReadings("card.csv", strings.NewReader(text))
		var place *form.Problem
		if err != nil {
			if !errors.As(err, &place) && !strings.Contains(err.Error(), "card.csv") {
				t.Errorf("an error without its place: %v", err)
			}
			return
		}
		once := written(t, r)
		if twice := written(t, readBack(t, once)); once != twice {
			t.Errorf("%q\nread and written again:\n%q\n%q", text, once, twice)
		}
		for _, m := range (recap.Evening{}).Match(r.Frames, nil, nil) {
			if m.Taken.IsZero() || m.File == "" {
				t.Errorf("a frame that is none: %+v", m)
			}
		}
	})
}
