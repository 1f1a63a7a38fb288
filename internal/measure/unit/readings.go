package unit

import (
	"fmt"
	"strings"
)

// A number that people write in two ways is asked about, never guessed: the
// error names both readings, each as it would be read.

// thousands is how many digits follow a mark that may part thousands.
const thousands = 3

// group is digits around one mark: "1,450" or "5,5".
type group struct{ before, after string }

// groupAt returns the digits around the first mark in text; ok is false
// without digits on both sides.
func groupAt(text string, mark byte) (g group, ok bool) {
	i := strings.IndexByte(text, mark)
	if i < 0 {
		return g, false
	}
	from, to := i, i+1
	for from > 0 && digit(text[from-1]) {
		from--
	}
	for to < len(text) && digit(text[to]) {
		to++
	}
	return group{text[from:i], text[i+1 : to]}, from < i && to > i+1
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// parts reports that the mark may part thousands: 1 to 3 digits, and then 3.
func (g group) parts() bool {
	return len(g.before) <= thousands && len(g.after) == thousands && g.before != "0"
}

// decimal writes the number with a decimal point, and so that it cannot be
// read as thousands.
func (g group) decimal() string {
	text := strings.TrimSuffix(g.before+"."+strings.TrimRight(g.after, "0"), ".")
	if text == g.before+"."+g.after && g.parts() {
		text += "0"
	}
	return text
}

func (g group) whole() string { return g.before + g.after }

// commaCure says what a number with a comma may mean.
func commaCure(seen string) string {
	g, ok := groupAt(seen, ',')
	switch {
	case ok && g.parts():
		return fmt.Sprintf("is it %s or %s? write %[1]q or %[2]q, with a decimal point and no thousands mark", g.decimal(), g.whole())
	case ok:
		return fmt.Sprintf("is it %s? write %[1]q, with a decimal point; or %q, if the comma stands by mistake", g.decimal(), g.whole())
	}
	return `write a decimal point and no thousands mark, as in "4.5" or "1200"`
}

// pointAsked answers light such as "1.450 lx", in which the point may part
// thousands; "" where it cannot.
func pointAsked(text string) string {
	g, ok := groupAt(text, '.')
	rest := strings.TrimSpace(strings.TrimPrefix(text, g.before+"."+g.after))
	if !ok || !g.parts() || rest != "" && rest != "lx" && rest != "lux" {
		return ""
	}
	return fmt.Sprintf("is it %s lx or %s lx? write %[1]q or %[2]q", g.decimal(), g.whole())
}

// longBare is the longest time, in seconds, that a bare number is taken for: no
// camera's dial goes beyond 30 s, and 60, 250 or 1000 alone mean parts of a second.
const longBare = 30

// bareAsked answers a bare number that is far too long for a shutter time; ""
// for a time that somebody may mean.
func bareAsked(text string, t Shutter) string {
	if t <= longBare || strings.Trim(text, "0123456789.") != "" {
		return ""
	}
	return fmt.Sprintf("%s s is %s; is it 1/%[1]s? write \"1/%[1]s\" or \"%[1]s s\"", text, longTime(t))
}

// longTime tells a long time as people do: "1000 s is 17 minutes".
func longTime(t Shutter) string {
	const minute, hour = 60, 3600
	switch s := float64(t); {
	case s < 2*minute:
		return fmt.Sprintf("%.0f seconds", s)
	case s < 2*hour:
		return fmt.Sprintf("%.0f minutes", s/minute)
	default:
		return fmt.Sprintf("%.0f hours", s/hour)
	}
}
