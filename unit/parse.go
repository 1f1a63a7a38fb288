package unit

import "errors"

var errUnwritten = errors.New("parser not written yet")

// ParseLength reads a length as written at a rink: "4 1/2 in", "4½ in",
// "5' 6\"", "5 ft 6 in", "114 mm", "8.5 m". A bare number is an error.
func ParseLength(s string) (Length, error) { return 0, errUnwritten }

// ParseSize reads a width by a height: "5.5 in x 4.5 in", "36 x 24 mm".
func ParseSize(s string) (Size, error) { return Size{}, errUnwritten }

// ParseAngle reads an angle; a bare number is degrees.
func ParseAngle(s string) (Angle, error) { return 0, errUnwritten }

// ParseIlluminance reads light: "1200 lx", "1.2 klx", "110 fc"; a bare number is lux.
func ParseIlluminance(s string) (Illuminance, error) { return 0, errUnwritten }

// ParseShutter reads an exposure time: "1/1000 s", "1/1000", "0.5"; a bare number is seconds.
func ParseShutter(s string) (Shutter, error) { return 0, errUnwritten }

// ParseStop reads an f-number: "f/2.8" or "2.8".
func ParseStop(s string) (Stop, error) { return 0, errUnwritten }

// ParseSpeed reads a speed: "8 m/s", "100 km/h", "60 mph"; a bare number is m/s.
func ParseSpeed(s string) (Speed, error) { return 0, errUnwritten }

// Format prints l in the system's units for reading: "114 mm", "4 1/2 in", "36 ft 9 in".
func (l Length) Format(sys System) string { return "" }

// Format prints the size in the system's units with one closing unit.
func (s Size) Format(sys System) string { return "" }
