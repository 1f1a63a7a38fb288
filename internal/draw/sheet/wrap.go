package sheet

import "strings"

// ellipsis ends a text that was cut short.
const ellipsis = "…"

// Wrap breaks a text into lines no wider than a width, at a type size, all in
// millimetres. Line breaks in the text are kept; a word wider than the width is
// broken within.
func (f Face) Wrap(s string, size, width float64) []string {
	var out []string
	for line := range strings.SplitSeq(s, "\n") {
		out = append(out, f.wrapLine(line, size, width)...)
	}
	return out
}

func (f Face) wrapLine(s string, size, width float64) []string {
	var out []string
	cur := ""
	for _, word := range strings.Fields(s) {
		try := word
		if cur != "" {
			try = cur + " " + word
		}
		if f.Width(try, size) <= width {
			cur = try
			continue
		}
		if cur != "" {
			out = append(out, cur)
		}
		for cur = word; f.Width(cur, size) > width; {
			n := f.prefix(cur, size, width)
			if n == len(cur) {
				break // a single letter wider than the line
			}
			out, cur = append(out, cur[:n]), cur[n:]
		}
	}
	return append(out, cur)
}

// prefix returns how many bytes of s fit into a width, one character at least.
func (f Face) prefix(s string, size, width float64) int {
	w := 0.0
	for i, r := range s {
		w += f.Width(string(r), size)
		if i > 0 && w > width {
			return i
		}
	}
	return len(s)
}

// Shorten returns the text, or as much of it as fits into a width with an
// ellipsis at its end; lengths in millimetres.
func (f Face) Shorten(s string, size, width float64) string {
	if f.Width(s, size) <= width {
		return s
	}
	room := width - f.Width(ellipsis, size)
	n := 0
	w := 0.0
	for i, r := range s {
		w += f.Width(string(r), size)
		if w > room {
			break
		}
		n = i + len(string(r))
	}
	return strings.TrimRight(s[:n], " ") + ellipsis
}

// Paragraph adds wrapped lines of text below each other and returns the height
// that they take. at is the top left corner, lengths in millimetres, leading the
// distance between baselines.
func (g *Group) Paragraph(class string, face Face, at Point, s string, size, width, leading float64) float64 {
	lines := face.Wrap(s, size, width)
	for i, line := range lines {
		if line != "" {
			g.Add(class, Text{At: Pt(at.X, at.Y+float64(i)*leading), S: line, Size: size, VAlign: Top})
		}
	}
	return float64(len(lines)) * leading
}
