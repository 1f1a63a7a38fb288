package unit

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The same length in any unit is the same to the last few bits.
func TestUnitsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sixteenths := rapid.IntRange(0, 16*12*300).Draw(t, "sixteenths")
		in := float64(sixteenths) / 16
		whole, part := sixteenths/16, sixteenths%16
		texts := []string{
			fmt.Sprintf("%v in", in), fmt.Sprintf("%v ft", in/12), fmt.Sprintf("%d %d/16 in", whole, part), fmt.Sprintf(`%d' %d-%d/16"`, whole/12, whole%12, part),
			fmt.Sprintf("%v mm", in*25.4), fmt.Sprintf("%v cm", in*2.54), fmt.Sprintf("%v m", in*0.0254),
		}
		for _, text := range texts {
			l, err := ParseLength(text)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(l.Inches()-in) > 1e-12*(1+in) {
				t.Fatalf("%s is %v in, want %v", text, l.Inches(), in)
			}
		}
	})
}

// What is printed reads back within half of the last place printed.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Float64Range(-200, 200).Draw(t, "l"))
		if rapid.Bool().Draw(t, "small") {
			l /= 1000
		}
		for text, tol := range map[string]Length{
			l.Format(Metric): 0.005001, l.Format(Imperial): Inch / 8 * 1.0001,
			l.FormatFine(Metric): 0.00005001, l.FormatFine(Imperial): Inch / 32 * 1.0001,
		} {
			back, err := ParseOffset(text)
			if err != nil {
				t.Fatal(err)
			}
			if d := back - l; d > tol || d < -tol {
				t.Fatalf("%v printed as %q reads back as %v", l, text, back)
			}
		}
		for _, sys := range []System{Metric, Imperial} {
			if back, err := ParseOffset(l.Exact(sys)); err != nil || back != l {
				t.Fatalf("%v exactly printed as %q reads back as %v, %v", l, l.Exact(sys), back, err)
			}
		}
	})
}

func BenchmarkParseLength(b *testing.B) {
	for b.Loop() {
		if _, err := ParseLength(`5' 6 1/2"`); err != nil {
			b.Fatal(err)
		}
	}
}
