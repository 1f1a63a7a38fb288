package dxffile

import (
	"fmt"
	"math"
	"strconv"
	"unicode/utf8"
)

// pairs writes group codes and values, each on a line of its own.
type pairs struct {
	b   []byte
	r12 bool
}

func (p *pairs) code(c int) {
	p.b = strconv.AppendInt(p.b, int64(c), 10)
	p.b = append(p.b, '\n')
}

// class marks where the fields of a subclass begin.
func (p *pairs) class(name string) *pairs {
	if p.r12 {
		return p
	}
	return p.str(100, name)
}

// str writes a text value. Characters beyond ASCII are written as \U+XXXX, which
// release 2000 reads whatever its code page; release 12 has those of its code page,
// and a question mark for others. Control characters become spaces.
func (p *pairs) str(code int, s string) *pairs {
	p.code(code)
	for _, r := range s {
		switch {
		case r < ' ' || r == 0x7F:
			p.b = append(p.b, ' ')
		case r < utf8.RuneSelf:
			p.b = append(p.b, byte(r))
		case p.r12 && r >= 0xA0 && r <= 0xFF: // where code page 1252 is as Unicode
			p.b = append(p.b, byte(r))
		case p.r12:
			p.b = append(p.b, plain(r)...)
		default:
			p.b = append(p.b, `\U+`...)
			p.b = fmt.Appendf(p.b, "%04X", min(r, 0xFFFF))
		}
	}
	p.b = append(p.b, '\n')
	return p
}

// plain is a character beyond code page 1252 as a shop's old program can show it.
func plain(r rune) string {
	switch r {
	case '–', '—', '−':
		return "-"
	case '≥':
		return ">="
	case '≤':
		return "<="
	case '…':
		return "..."
	case '’', '‘':
		return "'"
	case '”', '“':
		return "\""
	}
	return "?"
}

func (p *pairs) int(code, v int) *pairs {
	p.code(code)
	p.b = strconv.AppendInt(p.b, int64(v), 10)
	p.b = append(p.b, '\n')
	return p
}

// decimals rounds lengths to a millionth of a millimetre, bulges and angles alike.
const decimals = 6

func (p *pairs) num(code int, v float64) *pairs {
	p.code(code)
	v = math.Round(v*1e6) / 1e6
	if math.IsNaN(v) || math.IsInf(v, 0) || v == 0 {
		v = 0
	}
	p.b = strconv.AppendFloat(p.b, v, 'f', decimals, 64)
	p.b = append(p.b, '\n')
	return p
}

// xy writes a point; offset 0 gives codes 10 and 20, offset 1 gives 11 and 21.
func (p *pairs) xy(offset int, x, y float64) *pairs {
	return p.num(10+offset, x).num(20+offset, y)
}

func (p *pairs) xyz(offset int, x, y float64) *pairs {
	return p.xy(offset, x, y).num(30+offset, 0)
}

func (p *pairs) section(name string) { p.str(0, "SECTION").str(2, name) }
