package unit

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"
	"pgregory.net/rapid"
)

// everything holds one of each quantity, as a document would.
type everything struct {
	Wide  Length      `json:"wide" yaml:"wide"`
	Back  Offset      `json:"back" yaml:"back"`
	Hole  Size        `json:"hole" yaml:"hole"`
	Turn  Angle       `json:"turn" yaml:"turn"`
	Light Illuminance `json:"light" yaml:"light"`
	Time  Shutter     `json:"time" yaml:"time"`
	Open  Stop        `json:"open" yaml:"open"`
	Fast  ISO         `json:"fast" yaml:"fast"`
	Skate Speed       `json:"skate" yaml:"skate"`
	Units System      `json:"units" yaml:"units"`

	Thick Maybe[Length] `json:"thick" yaml:"thick"`
	Round Maybe[Length] `json:"round" yaml:"round"`
}

func drawEverything(t *rapid.T) everything {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	e := everything{
		Wide: Length(f("wide", 0, 10000)), Back: Offset(f("back", -10000, 10000)),
		Hole: Size{Length(f("w", 1e-3, 10)), Length(f("h", 1e-3, 10))}, Turn: Angle(f("turn", -6, 6)),
		Light: Illuminance(f("light", 1e-3, 1e6)), Time: Shutter(f("time", 1e-6, 60)), Open: Stop(f("open", 0.5, 100)),
		Fast: ISO(f("fast", 1, 1e6)), Skate: Speed(f("skate", 0, 100)), Units: System(rapid.IntRange(0, 1).Draw(t, "units")),
	}
	if rapid.Bool().Draw(t, "known") {
		e.Thick = Known(Length(f("thick", 0, 1)))
	}
	return e
}

// What is written as JSON or YAML reads back to the last bit.
func TestTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawEverything(t)
		b, err := json.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		var back everything
		if err := json.Unmarshal(b, &back); err != nil || back != e {
			t.Fatalf("%s\nread back %+v %v", b, back, err)
		}
		y, err := yaml.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		back = everything{}
		if err := yaml.Unmarshal(y, &back); err != nil || back != e {
			t.Fatalf("%s\nread back %+v %v", y, back, err)
		}
	})
}

func TestYAMLNamesTheLine(t *testing.T) {
	cases := []struct{ text, says string }{
		{"wide: 4 ft\nhole:\n  5.5 x 4.5\n", `line 3, column 3: size "5.5 x 4.5"`},
		{"# a comment\nwide: 42\n", `line 2, column 7: length "42": a bare number`},
		{"wide: [1, 2]\n", "line 1, column 7: length"},
		{"back: {a: 1}\n", "line 1, column 7: length"},
		{"open: wide\n", `line 1, column 7: stop "wide"`},
		{"fast: &n ISO none\n", `line 1, column 7: ISO "ISO none"`},
		{"wide: 4 ft\nthick: 5\n", `line 2, column 8: length "5"`},
		{"units: furlongs\n", `line 1, column 8: units "furlongs"`},
	}
	for _, c := range cases {
		var e everything
		err := yaml.Unmarshal([]byte(c.text), &e)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %v, want %q", c.text, err, c.says)
			continue
		}
		var place *Error
		if !errors.As(err, &place) || place.Line == 0 {
			t.Errorf("%q: the place is lost in %#v", c.text, err)
		}
	}
}

func TestYAMLReadsWhatPeopleWrite(t *testing.T) {
	const text = "wide: 4½ in\nback: -5 ft\nhole: 5.5 in x 4.5 in\nturn: -36.5\nlight: 1.2 klx\ntime: 1/1000\nopen: f/2.8\nfast: 3200\nskate: 18 mph\nunits: imperial\nthick: null\nround: &r 1/2 in\n"
	var e everything
	if err := yaml.Unmarshal([]byte(text), &e); err != nil {
		t.Fatal(err)
	}
	if e.Wide != 0.1143 || e.Back != -1.524 || e.Light != 1200 || e.Time != 0.001 || e.Open != 2.8 || e.Fast != 3200 || e.Units != Imperial {
		t.Errorf("%+v", e)
	}
	if _, known := e.Thick.Get(); known || e.Round.Or(0) != 0.0127 {
		t.Errorf("thick %+v, round %+v", e.Thick, e.Round)
	}
}

// An error leaves the old value alone and cuts a long text short.
func TestErrorsAreShort(t *testing.T) {
	l := Length(3)
	err := l.UnmarshalText([]byte(strings.Repeat("\x1b[31m long ", 2000)))
	if err == nil || len(err.Error()) > 400 || strings.ContainsRune(err.Error(), '\x1b') {
		t.Errorf("%v", err)
	}
	if l != 3 {
		t.Error("an error changed the value")
	}
}
