package solve

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// LPFile writes a program in the CPLEX-LP format, so that any solver of mixed
// integer programs can confirm an answer. Column i is variable y<i>; a worth that
// is not [Linear] needs variables of its own, which its room writes between
// [LPFile.Maximize] and [LPFile.Rows].
//
//	Maximize value: ...   Subject To ...   Bounds y<i> = 1   Binaries y<i>   End
type LPFile struct {
	*bufio.Writer
	program *Program
	terms   int // on the present line
	scratch []byte
}

// NewLPFile begins a file with a comment, and a line of comment for each column.
func NewLPFile(out io.Writer, p *Program, about string, column func(i int) string) *LPFile {
	w := &LPFile{Writer: bufio.NewWriter(out), program: p}
	w.Comment(about)
	for i := range p.Columns {
		w.Comment(fmt.Sprintf("y%d: %s", i, column(i)))
	}
	return w
}

// Comment writes a line for people.
func (w *LPFile) Comment(text string) {
	fmt.Fprintln(w, "\\ "+strings.Join(strings.Fields(text), " "))
}

// Maximize begins the objective; its terms follow.
func (w *LPFile) Maximize() { fmt.Fprint(w, "Maximize\n value:") }

// termsPerLine keeps lines below the 560 characters at which old readers stop.
const termsPerLine = 10

// Term writes " + coefficient name", the coefficient without unit; the name is a
// letter and a number, and a second number where that is not below zero.
func (w *LPFile) Term(coefficient float64, letter byte, i, m int) {
	b := w.scratch[:0]
	if w.terms++; w.terms > termsPerLine {
		b, w.terms = append(b, '\n'), 1
	}
	if b = append(b, " + "...); coefficient < 0 {
		b[len(b)-2], coefficient = '-', -coefficient
	}
	if coefficient != 1 {
		b = strconv.AppendFloat(b, coefficient, 'g', 17, 64)
		b = append(b, ' ')
	}
	b = append(b, letter)
	b = strconv.AppendInt(b, int64(i), 10)
	if m >= 0 {
		b = append(b, '_')
		b = strconv.AppendInt(b, int64(m), 10)
	}
	w.scratch = b
	w.Write(b)
}

// Rows writes the program's rows that can bind, each with a name and a line of
// comment where about says something.
func (w *LPFile) Rows(name, about func(r int) string) {
	for r, row := range w.program.Rows {
		if row.Least == 0 && len(row.Columns) <= row.Most {
			continue
		}
		if text := about(r); text != "" {
			w.Comment(text)
		}
		switch {
		case row.Least == row.Most:
			w.row(name(r), row.Columns, "=", row.Most)
		case row.Least > 0:
			w.row(name(r)+"_least", row.Columns, ">=", row.Least)
			fallthrough
		default:
			w.row(name(r), row.Columns, "<=", row.Most)
		}
	}
}

// Caps writes the program's caps, each with a line of comment.
func (w *LPFile) Caps(about func(k int) string) {
	for k, c := range w.program.Caps {
		w.Comment(about(k))
		fmt.Fprintf(w, " cap%d:", k)
		for i, x := range c.Cost {
			if x != 0 {
				w.Term(float64(x), 'y', i, -1)
			}
		}
		fmt.Fprintf(w, " <= %d\n", c.Most)
	}
}

func (w *LPFile) row(name string, columns []int, sign string, count int) {
	fmt.Fprintf(w, " %s:", name)
	for _, i := range columns {
		w.Term(1, 'y', i, -1)
	}
	fmt.Fprintf(w, " %s %d\n", sign, count)
}

// End writes what the columns may be, other variables that are 0 or 1, and all that
// is still held back.
func (w *LPFile) End(others ...string) error {
	if len(w.program.In) > 0 {
		fmt.Fprintln(w, "Bounds")
	}
	for _, i := range w.program.In {
		fmt.Fprintf(w, " y%d = 1\n", i)
	}
	fmt.Fprintln(w, "Binaries")
	for i := range w.program.Columns {
		fmt.Fprintf(w, " y%d\n", i)
	}
	for _, name := range others {
		fmt.Fprintln(w, " "+name)
	}
	fmt.Fprintln(w, "End")
	return w.Flush()
}

// WriteLP writes a program with this worth.
func (c Linear) WriteLP(out io.Writer, p *Program, about string, column func(i int) string) error {
	w := NewLPFile(out, p, about, column)
	w.Maximize()
	for i, x := range c {
		w.Term(x, 'y', i, -1)
	}
	fmt.Fprintln(w, "\nSubject To")
	w.Rows(func(r int) string { return "row" + strconv.Itoa(r) }, func(int) string { return "" })
	w.Caps(func(int) string { return "cap" })
	return w.End()
}
