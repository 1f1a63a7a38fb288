package unit

import (
	"math"
	"strings"
	"testing"
)

func TestParseSize(t *testing.T) {
	cases := []struct {
		text string
		w, h Length
	}{
		{"5.5 in x 4.5 in", 0.1397, 0.1143}, {"36 x 24 mm", 0.036, 0.024}, {"36x24mm", 0.036, 0.024}, {"36 X 24 mm", 0.036, 0.024},
		{`5 1/2" × 4 1/2"`, 0.1397, 0.1143}, {"5½ × 4½ in", 0.1397, 0.1143}, {"200 ft by 85 ft", 60.96, 25.908}, {"200 x 85 ft", 60.96, 25.908},
		{`5' 6" x 4'`, 1.6764, 1.2192}, {"60 m x 3000 cm", 60, 30}, {"23.5 x 15.7 mm", 0.0235, 0.0157},
	}
	for _, c := range cases {
		s, err := ParseSize(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if math.Abs(float64(s.W-c.w)) > 1e-14 || math.Abs(float64(s.H-c.h)) > 1e-14 {
			t.Errorf("%q = %v, want %v x %v", c.text, s, c.w, c.h)
		}
	}
	for _, text := range []string{"", "5 in", "5 x 4", "5 in x 4", "5 x 5' 6\"", "5 x 4 x 3 in", "0 x 4 in", "-5 x 4 in", "5 in x 4 furlongs", "x", "x in", "5 x in", "11000 x 5 m", "NaN x 5 mm", "5,5 x 4 in"} {
		if s, err := ParseSize(text); err == nil {
			t.Errorf("%q read as %v", text, s)
		} else if !strings.Contains(err.Error(), "width x height") && !strings.Contains(err.Error(), "decimal point") {
			t.Errorf("%q: no cure in %q", text, err)
		}
	}
}

func TestParsePixels(t *testing.T) {
	for _, text := range []string{"6000 x 4000", "6000x4000", "6000 × 4000 px", " 6000 X 4000 "} {
		if w, h, err := ParsePixels(text); err != nil || w != 6000 || h != 4000 {
			t.Errorf("%q: %d %d %v", text, w, h, err)
		}
	}
	for _, text := range []string{"", "6000", "6000 x", "x 4000", "0 x 4000", "6000.5 x 4000", "-6000 x 4000", "99999999999999999999 x 1", "6000 x 4000 x 3", "24 MP"} {
		if w, h, err := ParsePixels(text); err == nil {
			t.Errorf("%q read as %d x %d", text, w, h)
		}
	}
}

// scalarCase is one text of a quantity with one number and one unit.
type scalarCase struct {
	text string
	want float64
}

func checkScalar[T ~float64](t *testing.T, parse func(string) (T, error), good []scalarCase, bad []string) {
	t.Helper()
	for _, c := range good {
		got, err := parse(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if math.Abs(float64(got)-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%q = %v, want %v", c.text, float64(got), c.want)
		}
	}
	for _, text := range bad {
		got, err := parse(text)
		if err == nil {
			t.Errorf("%q read as %v", text, float64(got))
		} else if !strings.Contains(err.Error(), "write ") {
			t.Errorf("%q: no cure in %q", text, err)
		}
	}
}

func TestParseAngle(t *testing.T) {
	checkScalar(t, ParseAngle, []scalarCase{
		{"180", math.Pi}, {"45", math.Pi / 4}, {"45 deg", math.Pi / 4}, {"45°", math.Pi / 4}, {"-56", -56 * math.Pi / 180}, {"0.5 rad", 0.5}, {"0", 0}, {"22 1/2 degrees", math.Pi / 8},
	}, []string{"", "steep", "400", "-361 deg", "NaN", "Inf", "45 grad", "1e400", "4,5"})
}

func TestParseIlluminance(t *testing.T) {
	checkScalar(t, ParseIlluminance, []scalarCase{
		{"1200", 1200}, {"1200 lx", 1200}, {"1200lux", 1200}, {"1.2 klx", 1200}, {"1 klx", 1000}, {"100 fc", 100 / 0.09290304},
		{"100 foot-candles", 100 / 0.09290304}, {"1 foot-candle", 10.763910416709722}, {"100 footcandles", 100 / 0.09290304}, {"0.5", 0.5},
	}, []string{"", "bright", "0", "-5", "NaN lx", "1e9 lx", "1200 lumen", "1,200 lx"})
}

func TestParseShutter(t *testing.T) {
	checkScalar(t, ParseShutter, []scalarCase{
		{"1/1000 s", 0.001}, {"1/1000", 0.001}, {"1/1000s", 0.001}, {"0.5", 0.5}, {"2 s", 2}, {`2"`, 2}, {"1/1.3 sec", 1 / 1.3}, {"20 ms", 0.02}, {"1e-3", 0.001}, {"1 1/2 s", 1.5},
	}, []string{"", "fast", "0", "1/0", "-1/1000", "NaN", "1/1000 min", "1e9", "1e-12", "1/", "/1000"})
	if v, err := ParseShutter("1/1000"); err != nil || v != 0.001 {
		t.Errorf("1/1000 is %v, not exactly 0.001", v)
	}
}

func TestParseStop(t *testing.T) {
	checkScalar(t, ParseStop, []scalarCase{
		{"f/2.8", 2.8}, {"F/2.8", 2.8}, {"f2.8", 2.8}, {"ƒ/2.8", 2.8}, {"2.8", 2.8}, {"f/ 16", 16}, {" f/0.95 ", 0.95}, {"32", 32},
	}, []string{"", "f/", "wide", "f/0", "-2.8", "f/-2.8", "NaN", "f/NaN", "f/2.8 mm", "1:2.8", "f/f/2.8", "5000"})
	if v, err := ParseStop("f/2.8"); err != nil || v != 2.8 {
		t.Errorf("f/2.8 is %v, not exactly 2.8", v)
	}
}

func TestParseISO(t *testing.T) {
	checkScalar(t, ParseISO, []scalarCase{{"3200", 3200}, {"ISO 3200", 3200}, {"iso3200", 3200}, {"ISO 12.5", 12.5}},
		[]string{"", "ISO", "0", "-100", "auto", "NaN", "1e12", "3200 asa"})
}

func TestParseSpeed(t *testing.T) {
	checkScalar(t, ParseSpeed, []scalarCase{
		{"8", 8}, {"8.2 m/s", 8.2}, {"36 km/h", 10}, {"60 mph", 26.8224}, {"10 ft/s", 3.048}, {"0", 0},
	}, []string{"", "fast", "-8", "8 knots", "NaN", "2000"})
}

func TestFormats(t *testing.T) {
	cases := []struct{ got, want string }{
		{Shutter(0.001).Format(), "1/1000 s"}, {Shutter(1 / 812.75).Format(), "1/812.8 s"}, {Shutter(0.5).Format(), "0.5 s"}, {Shutter(2).Format(), "2 s"}, {Shutter(1.0 / 60).Format(), "1/60 s"},
		{Stop(2.8).Format(), "f/2.8"}, {Stop(11.3137).Format(), "f/11.3"}, {Stop(0.95).Format(), "f/0.95"},
		{Illuminance(1200).Format(Metric), "1200 lx"}, {Illuminance(1200).Format(Imperial), "111 fc"}, {Illuminance(5.126).Format(Metric), "5.13 lx"},
		{Speed(8.2).Format(Metric), "8.2 m/s"}, {Speed(8.2).Format(Imperial), "18.3 mph"},
		{Angle(-0.6370451769779303).Format(), "-36.5 deg"}, {Angle(0).Format(), "0 deg"},
		{Size{0.1397, 0.1143}.Format(Metric), "140 x 114 mm"}, {Size{0.1397, 0.1143}.Format(Imperial), "5 1/2 x 4 1/2 in"},
		{Size{0.1397, 0.1143}.FormatFine(Metric), "139.7 x 114.3 mm"}, {Size{0.1397, 0.1143}.FormatFine(Imperial), "5 1/2 x 4 1/2 in"},
		{Size{60.96, 25.908}.Format(Imperial), "200 x 85 ft"}, {Size{60, 30}.Format(Metric), "60 x 30 m"}, {Size{0.036, 0.024}.Format(Metric), "36 x 24 mm"},
	}
	for _, c := range cases {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

func TestSystemOf(t *testing.T) {
	for text, want := range map[string]System{"200 ft": Imperial, `5' 6"`: Imperial, "5.5 in x 4.5 in": Imperial, "42in": Imperial, "36 x 24 mm": Metric, "60 m": Metric, "": Metric, "1/1000": Metric} {
		if got := SystemOf(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	for _, s := range []System{Metric, Imperial} {
		if got, err := ParseSystem(s.String()); err != nil || got != s {
			t.Errorf("%v: %v %v", s, got, err)
		}
	}
	if _, err := ParseSystem("Imperial "); err == nil {
		t.Error("taken with a space")
	}
}
