package unit

// MaxSpeed is the greatest speed that is read, in metres per second.
const MaxSpeed Speed = 1000

// The mile is 1609.344 m exactly, the foot 0.3048 m.
var speeds = scalar{
	what: "speed",
	units: map[string]ratio{
		"": {1, 1}, "m/s": {1, 1}, "km/h": {10, 36}, "kmh": {10, 36}, "kph": {10, 36},
		"mph": {1609.344, 3600}, "mi/h": {1609.344, 3600}, "ft/s": {381, 1250}, "fps": {381, 1250},
	},
	max: float64(MaxSpeed), limits: "0 to 1000 m/s",
	cure: `write m/s, km/h, mph or ft/s, as in "8.2 m/s"; a bare number is m/s`,
}

// ParseSpeed reads a speed: "8 m/s", "100 km/h", "60 mph", "20 ft/s"; a bare
// number is m/s. The result is in metres per second, from 0 to [MaxSpeed].
func ParseSpeed(s string) (Speed, error) {
	v, err := speeds.parse(s)
	return Speed(v), err
}

// MetresPerSecond returns v as a plain number of metres per second.
func (v Speed) MetresPerSecond() float64 { return float64(v) }

// Format prints the speed to three figures: "8.2 m/s", "18.3 mph".
func (v Speed) Format(sys System) string {
	if sys == Imperial {
		return figures(float64(v)*3600/1609.344) + " mph"
	}
	return figures(float64(v)) + " m/s"
}
