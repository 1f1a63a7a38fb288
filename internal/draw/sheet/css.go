package sheet

import "strings"

// CSS returns the style sheet as CSS rules for web pages. scope is a selector
// put before each class (".figure" gives ".figure .hole{...}"), or empty.
// Named colours become variables, "var(--sheet-ice,#eaf4fa)", that a page may set.
func (s Stylesheet) CSS(scope string) string {
	if scope != "" {
		scope += " "
	}
	return s.css(scope, true)
}

func (s Stylesheet) css(scope string, variables bool) string {
	var b strings.Builder
	for _, r := range s {
		body := r.Style.css(variables)
		if body == "" {
			continue
		}
		b.WriteString(scope)
		b.WriteString("." + r.Class + "{" + body + "}\n")
	}
	return b.String()
}

func (s Style) css(variables bool) string {
	var d []string
	d = s.Stroke.css(d, "stroke", variables)
	d = s.Fill.css(d, "fill", variables)
	if s.Width != 0 {
		d = append(d, "stroke-width:"+mm(s.Width))
	}
	if s.Dash != nil {
		d = append(d, "stroke-dasharray:"+dashList(s.Dash))
	}
	switch s.Cap {
	case Butt:
		d = append(d, "stroke-linecap:butt")
	case Round:
		d = append(d, "stroke-linecap:round")
	}
	if s.Face != 0 {
		d = append(d, "font-family:"+s.Face.Family(), "font-weight:"+s.Face.weight(), "font-style:"+s.Face.slant())
	}
	if s.Size != 0 {
		d = append(d, "font-size:"+mm(s.Size)+"px")
	}
	return strings.Join(d, ";")
}

func (c Colour) css(d []string, property string, variables bool) []string {
	if !c.said() {
		return d
	}
	if !c.visible() {
		return append(d, property+":none")
	}
	v := c.hex()
	if variables && c.Name != "" {
		v = "var(--sheet-" + c.Name + "," + v + ")"
	}
	return append(d, property+":"+v, property+"-opacity:"+string(appendRounded(nil, float64(c.A)/255, 3)))
}

func (c Colour) hex() string {
	const digits = "0123456789abcdef"
	b := [7]byte{'#'}
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		b[1+2*i], b[2+2*i] = digits[v>>4], digits[v&15]
	}
	return string(b[:])
}

func (f Face) weight() string {
	if f == Bold {
		return "700"
	}
	return "400"
}

func (f Face) slant() string {
	if f == Italic {
		return "italic"
	}
	return "normal"
}

func dashList(dash []float64) string {
	if len(dash) == 0 {
		return "none"
	}
	var b []byte
	for i, v := range dash {
		if i > 0 {
			b = append(b, ' ')
		}
		b = appendMM(b, v)
	}
	return string(b)
}

func mm(v float64) string { return string(appendMM(nil, v)) }
