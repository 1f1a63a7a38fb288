package optics

import (
	"math"
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
)

// Mark is one mark of a camera's third-stop scale: what is engraved and what
// it means.
type Mark struct {
	Nominal float64 // as engraved: 1250 for ISO 1250, 2.8 for f/2.8; a time in seconds, 0.00125 for 1/800
	Exact   float64 // the power of two that it stands for: 1269.92
	Text    string  // as engraved: "1250", "f/2.8", "1/800"
	Index   int     // thirds of a stop from ISO 100, f/1 or 1 s, rising with the number or the time
}

// third returns the index of the mark nearest in stops, stops counted from the scale's origin.
func third(stops float64) int { return int(math.Round(3 * stops)) }

// NearestISO returns the third-stop mark nearest in stops to an exact ISO
// number above 0: 100 x 2^(i/3). Below ISO 3 the mark is the exact value to
// two figures; above, the scale goes on by doubling.
func NearestISO(s unit.ISO) Mark {
	i := third(math.Log2(float64(s) / 100))
	m := Mark{Exact: 100 * math.Exp2(float64(i)/3), Index: i}
	switch slow := i + len(slowISO); {
	case slow < 0:
		m.Nominal = twoFigures(m.Exact)
	case i < 0:
		m.Nominal = slowISO[slow]
	default:
		m.Nominal = fastISO(i/3, i%3)
	}
	m.Text = strconv.FormatFloat(m.Nominal, 'f', -1, 64)
	return m
}

// slowISO is the engraved scale below 100, in thirds.
var slowISO = [...]float64{3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80}

// fastISO is the engraved scale from 100 up: doubles of 100, 125 and 160, but
// 1250 where 1280 would come.
func fastISO(octave, step int) float64 {
	if step == 2 && octave >= 3 {
		return 1250 * math.Exp2(float64(octave-3))
	}
	return [...]float64{100, 125, 160}[step] * math.Exp2(float64(octave))
}

// stopScale is the engraved scale of f-numbers from f/0.5 (index -6) to f/128, in thirds.
var stopScale = [...]float64{
	0.5, 0.56, 0.6, 0.7, 0.8, 0.9,
	1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1,
	8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80, 90, 102, 114, 128,
}

const stopOrigin = 6 // index of f/1

// NearestStop returns the third-stop mark nearest in stops to an exact
// f-number above 0: 2^(i/6). Beyond the engraved scale, f/0.5 to f/128, the
// mark is the exact value to two figures.
func NearestStop(n unit.Stop) Mark {
	i := third(Av(n))
	m := Mark{Exact: math.Exp2(float64(i) / 6), Index: i}
	if k := i + stopOrigin; k >= 0 && k < len(stopScale) {
		m.Nominal = stopScale[k]
	} else {
		m.Nominal = twoFigures(m.Exact)
	}
	m.Text = "f/" + strconv.FormatFloat(m.Nominal, 'f', -1, 64)
	return m
}

// The engraved scale of times in thirds: seconds from 0.3 s up, fractions below.
var (
	longTimes  = [...]float64{0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30}
	shortTimes = [...]float64{4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800,
		1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000, 25600, 32000}
)

const (
	longOrigin  = 5 // index of 1 s in longTimes
	shortOrigin = 6 // 1/4 s is six thirds below 1 s
)

// NearestShutter returns the third-stop mark nearest in stops to an exact
// time in seconds above 0: 2^(i/3). Beyond the engraved scale, 1/32000 to 30 s,
// the mark is the exact value to two figures.
func NearestShutter(t unit.Shutter) Mark {
	i := third(-Tv(t))
	m := Mark{Exact: math.Exp2(float64(i) / 3), Index: i}
	fraction := func(n float64) {
		m.Nominal, m.Text = 1/n, "1/"+strconv.FormatFloat(n, 'f', -1, 64)
	}
	switch long, short := i+longOrigin, -i-shortOrigin; {
	case long >= 0 && long < len(longTimes):
		m.Nominal = longTimes[long]
		m.Text = strconv.FormatFloat(m.Nominal, 'f', -1, 64)
	case short >= 0 && short < len(shortTimes):
		fraction(shortTimes[short])
	case i > 0:
		m.Nominal = twoFigures(m.Exact)
		m.Text = strconv.FormatFloat(m.Nominal, 'f', -1, 64)
	default:
		fraction(twoFigures(1 / m.Exact))
	}
	return m
}

func twoFigures(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 1, 64), 64)
	if err != nil {
		return v
	}
	return r
}
