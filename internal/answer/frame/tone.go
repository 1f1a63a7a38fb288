package frame

import "math"

// lightOf returns the light of a display value, both 0..1 (sRGB, IEC 61966-2-1). Pictures
// have that curve and no other: what is brighter than white is cut off, as a sensor does.
func lightOf(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// valueOf returns the display value of light, the inverse of [lightOf].
func valueOf(light float64) float64 {
	if light <= 0.0031308 {
		return 12.92 * max(0, light)
	}
	return min(1, 1.055*math.Pow(light, 1/2.4)-0.055)
}

// displayGamma spreads factors of light evenly to the eye (sRGB in its plain 2.2 power
// form): a degree is the factor to the power 1/displayGamma.
const displayGamma = 2.2

// degree returns the degree of a factor of light.
func degree(factor float64) float32 { return float32(math.Pow(max(0, factor), 1/displayGamma)) }

// tones are what display values become when their light is multiplied: one row a degree, in
// steps of 1/toneSteps up to mostDegree, which is 2.2 stops more light.
type tones [mostDegree*toneSteps + 1][256]uint8

const (
	toneSteps  = 256
	mostDegree = 2
)

func newTones() *tones {
	const fine = 4096
	var back [fine + 1]uint8
	for i := range back {
		back[i] = uint8(255*valueOf(float64(i)/fine) + 0.5)
	}
	var lights [256]float64
	for v := range lights {
		lights[v] = fine * lightOf(float64(v)/255)
	}
	t := new(tones)
	for row := range t {
		factor := math.Pow(float64(row)/toneSteps, displayGamma)
		for v := range t[row] {
			t[row][v] = back[int(min(fine, lights[v]*factor+0.5))]
		}
	}
	return t
}

// at returns the row of a degree.
func (t *tones) at(degree float32) *[256]uint8 {
	return &t[int(min(mostDegree, max(0, degree))*toneSteps+0.5)]
}

// white returns the colour of a black body's light at a temperature in kelvin, 1667 to
// 25,000, as linear sRGB of luminance 1. The locus is that of Kim et al. (US patent
// 7024034, 2006): cubic in 1/T.
func white(kelvin float64) [3]float64 {
	u := 1000 / kelvin
	x := ((-0.2661239*u-0.2343589)*u+0.8776956)*u + 0.179910
	if kelvin > 4000 {
		x = ((-3.0258469*u+2.1070379)*u+0.2226347)*u + 0.240390
	}
	var y float64
	switch {
	case kelvin <= 2222:
		y = ((-1.1063814*x-1.34811020)*x+2.18555832)*x - 0.20219683
	case kelvin <= 4000:
		y = ((-0.9549476*x-1.37418593)*x+2.09137015)*x - 0.16748867
	default:
		y = ((3.0817580*x-5.87338670)*x+3.75112997)*x - 0.37001483
	}
	bigX, bigZ := x/y, (1-x-y)/y
	const least = 0.02 // a colour outside the screen's keeps a trace of its blue
	return [3]float64{
		max(least, 3.2404542*bigX-1.5371385-0.4985314*bigZ),
		max(least, -0.9692660*bigX+1.8760108+0.0415560*bigZ),
		max(least, 0.0556434*bigX-0.2040259+1.0572252*bigZ),
	}
}
