package unit

import (
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	const ft, in = 0.3048, 0.0254
	cases := []struct {
		text string
		want Length
	}{
		{"114 mm", 0.114}, {"114mm", 0.114}, {"11.4 cm", 0.114}, {"8.5 m", 8.5}, {".5 m", 0.5}, {"0 mm", 0},
		{"42 in", 1.0668}, {"4 1/2 in", 0.1143}, {"4-1/2 in", 0.1143}, {"4.5in", 0.1143}, {"4.5 in.", 0.1143},
		{"4½ in", 0.1143}, {"4 ½ in", 0.1143}, {"½ in", 0.0127}, {"¼\"", 0.00635}, {"¾”", 0.01905},
		{"⅛ in", 0.003175}, {"⅜ in", 0.009525}, {"⅝ in", 0.015875}, {"⅞ in", 0.022225}, {"5⁄8 in", 0.015875},
		{`5' 6"`, 1.6764}, {`5'6"`, 1.6764}, {"5’ 6”", 1.6764}, {"5′ 6″", 1.6764}, {"5' 6''", 1.6764}, {`5'-6"`, 1.6764},
		{"5 ft 6 in", 1.6764}, {"5ft 6in", 1.6764}, {"5 feet 6 inches", 1.6764}, {"5 FT 6 IN", 1.6764},
		{`5' 6 1/2"`, 5*ft + 6.5*in}, {"5 ft", 1.524}, {"5'", 1.524}, {`6"`, 0.1524}, {"200 ft", 60.96},
		{"1 m 20 cm", 1.2}, {"1e3 mm", 1}, {"+3 mm", 0.003}, {"10000 m", 10000}, {"3 metres", 3}, {"3\u00a0m", 3},
	}
	for _, c := range cases {
		got, err := ParseLength(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if d := got - c.want; d > 1e-15 || d < -1e-15 {
			t.Errorf("%q = %v, want %v", c.text, got, c.want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	cases := []struct{ text, says string }{
		{"5", `a bare number; a length needs its unit, as in "5 in"`}, {"4 1/2", "bare number"}, {"0", "bare number"}, {`5' 6`, "bare number"},
		{"", "empty"}, {"  ", "empty"}, {"in", "no number"}, {"-5 ft", "negative"}, {"−5 ft", "negative"},
		{"NaN m", "no number"}, {"Inf m", "no number"}, {"1e999 m", "not a finite"}, {"10001 m", "10 km"}, {"1e9 ft", "10 km"},
		{"5 yd", `unknown unit "yd"`}, {"5 m m", "no number"}, {"6 in 5 ft", "out of order"}, {"5 ft 3 cm", "mixed"},
		{"5.5 ft 6 in", "broken number"}, {"5 ft 14 in", "12 inches"}, {"1 m 100 cm", "more of the smaller"},
		{"1/0 in", "over zero"}, {"4 3/2 in", "not a fraction"}, {"1/ in", "not a fraction"}, {"4,5 in", "decimal point"}, {"1,000 mm", "decimal point"},
		{"4 in x 5 in", "no number"}, {"--5 in", "no number"}, {"5 in -3 in", "out of order"}, {"0x10 mm", "unknown unit"}, {"1_000 mm", "unknown unit"},
		{"\xff\xfe", "not text"}, {strings.Repeat("9", 300) + " m", "too long"}, {strings.Repeat("9", 190) + "e190 m", "not a finite"},
	}
	for _, c := range cases {
		got, err := ParseLength(c.text)
		if err == nil {
			t.Errorf("%q read as %v", c.text, got)
		} else if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: message %q lacks %q", c.text, err, c.says)
		}
	}
}

func TestParseOffsetKeepsSign(t *testing.T) {
	for text, want := range map[string]Length{"-5 ft": -1.524, `-5' 6"`: -1.6764, "+5 ft": 1.524, "-0 m": 0} {
		if got, err := ParseOffset(text); err != nil || got != want {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestTape(t *testing.T) {
	for l, want := range map[Length][2]string{
		0: {"0 mm", "0 in"}, 0.9: {"900 mm", "2 ft 11 7/16 in"}, 35.353: {"35.353 m", "115 ft 11 7/8 in"},
		3 * Foot: {"914 mm", "3 ft"}, -33 * Inch: {"-838 mm", "-2 ft 9 in"}, 0.9996: {"1 m", "3 ft 3 3/8 in"},
	} {
		if got := [2]string{l.Tape(Metric), l.Tape(Imperial)}; got != want {
			t.Errorf("%v: %q, want %q", float64(l), got, want)
		}
	}
}

func TestFormatLength(t *testing.T) {
	cases := []struct {
		l                            Length
		metric, imperial, mmFine, in string
	}{
		{0.1143, "114 mm", "4 1/2 in", "114.3 mm", "4 1/2 in"},
		{0.0127, "12.7 mm", "1/2 in", "12.7 mm", "1/2 in"},
		{36.7486 * Foot, "11.2 m", "36 ft 9 in", "11201 mm", "36 ft 8 31/32 in"},
		{42 * Inch, "1.07 m", "42 in", "1066.8 mm", "42 in"},
		{8 * Foot, "2.44 m", "8 ft", "2438.4 mm", "8 ft"},
		{-5 * Foot, "-1.52 m", "-5 ft", "-1524 mm", "-60 in"},
		{0, "0 mm", "0 in", "0 mm", "0 in"},
		{0.0003, "0.3 mm", "0.012 in", "0.3 mm", "0 in"},
		{0.9996, "1 m", "39 3/8 in", "999.6 mm", "39 11/32 in"},
		{4 * Foot, "1.22 m", "4 ft", "1219.2 mm", "48 in"},
		{5*Inch + 7*Inch/16, "138 mm", "5 1/2 in", "138.1 mm", "5 7/16 in"},
	}
	for _, c := range cases {
		got := [4]string{c.l.Format(Metric), c.l.Format(Imperial), c.l.FormatFine(Metric), c.l.FormatFine(Imperial)}
		if want := [4]string{c.metric, c.imperial, c.mmFine, c.in}; got != want {
			t.Errorf("%v: %q, want %q", float64(c.l), got, want)
		}
	}
}

// Glass is ordered in inches alone, panes higher than a man included.
func TestFormatCut(t *testing.T) {
	for l, want := range map[Length][2]string{8 * Foot: {"2438.4 mm", "96 in"}, 36.7486 * Foot: {"11201 mm", "440 31/32 in"}, 4.5 * Inch: {"114.3 mm", "4 1/2 in"}} {
		if got := [2]string{l.FormatCut(Metric), l.FormatCut(Imperial)}; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestExactReadsBack(t *testing.T) {
	for text, want := range map[string]string{"4.5 in": "4 1/2 in", "42 in": "42 in", "200 ft": "200 ft", "114 mm": "114 mm", "8.53 m": "8.53 m"} {
		l, err := ParseLength(text)
		if err != nil || l.Exact(Imperial) != want {
			t.Errorf("%q: %q, %v; want %q", text, l.Exact(Imperial), err, want)
		}
	}
	if got := Length(8.5).Exact(Metric); got != "8.5 m" {
		t.Error(got)
	}
}
