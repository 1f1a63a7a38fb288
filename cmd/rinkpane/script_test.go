package main

import (
	"bytes"
	"image"
	"image/jpeg"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"example.org/rinkpane/internal/decide/choose"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"rinkpane": func() {
		builtFrom = os.Getenv(stamp)
		os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, unhurried{os.Stderr}))
	}})
}

// stamp names the variable that gives the program under test a version of its own.
const stamp = "RINKPANE_TEST_BUILT_FROM"

// unhurried is standard error without the lines that tell how far long work is:
// they come where the machine is slow, and a script that demands silence must not
// turn red by that.
type unhurried struct{ io.Writer }

var progressLine = regexp.MustCompile(`^[a-z ]+: (\d+ %|value \S+, bound \S+, gap \S+ %)\n$`)

func (u unhurried) Write(b []byte) (int, error) {
	if progressLine.Match(b) {
		return len(b), nil
	}
	return u.Writer.Write(b)
}

// TestScriptsSeeNoProgress writes what a slow machine's command would: every kind
// of progress is kept from the scripts, and nothing else is.
func TestScriptsSeeNoProgress(t *testing.T) {
	reports := []choose.Report{
		{Stage: "charting the lenses"}, {Stage: "scoring", Share: 0.5}, {Stage: "proving", Share: 1, Value: 0.71, Bound: 0.72},
	}
	var plain, seen bytes.Buffer
	for _, r := range reports {
		(&progress{w: &plain}).tell(r)
		(&progress{w: unhurried{&seen}}).tell(r)
	}
	if n := bytes.Count(plain.Bytes(), []byte("\n")); n != len(reports) || seen.Len() > 0 {
		t.Errorf("%d lines of progress for %d reports; the scripts saw %q", n, len(reports), &seen)
	}
	const warning = "rinkpane: 3 % of the ice lies in the dark\n"
	if io.WriteString(unhurried{&seen}, warning); seen.String() != warning {
		t.Errorf("of a warning the scripts saw %q", &seen)
	}
}

// writePictures writes pictures without any data on how they were taken: small ones whose
// heads say that they are of a camera's size, 6000 x 4000.
func writePictures(ts *testscript.TestScript, _ bool, names []string) {
	for _, name := range names {
		var b bytes.Buffer
		ts.Check(jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 48, 32)), nil))
		size := bytes.Index(b.Bytes(), []byte{0xff, 0xc0}) + 5 // behind the marker of the frame's head, its length and depth
		copy(b.Bytes()[size:], []byte{4000 >> 8, 4000 & 0xff, 6000 >> 8, 6000 & 0xff})
		ts.Check(os.MkdirAll(filepath.Dir(ts.MkAbs(name)), 0o777))
		ts.Check(os.WriteFile(ts.MkAbs(name), b.Bytes(), 0o666))
	}
}

// TestScripts runs every command as a user runs it; each script in
// testdata/script reads as a page of a manual, bad input included.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("../../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:  "testdata/script",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"picture": writePictures},
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples) // the invented arenas
			return nil
		},
	})
}
