package choose

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// WriteLP writes the problem in the CPLEX-LP format, so that any solver of
// mixed integer programs can confirm the answer. Variables:
//
//	y<i>        1 when candidate i is chosen
//	x<i>_<m>    1 when candidate i is the best view of moment m
//	z<i>_<m>    1 when it is the second
//
//	maximise  sum w_m c_im x_im + d w_m c_im z_im
//	subject   sum over i of x_im <= 1,  sum over i of z_im <= 1   for each m
//	          x_im + z_im <= y_i                                  for each i, m
//	          sum of y in a group <= its cap; the count; fixed candidates
//
// Only pairs with c_im > 0 have variables. For a given set y the best x and z
// give each moment its two best chosen scores, the better one first since d <
// 1: that is the value of the set. x and z need not be declared whole: given
// y they are a transport problem, whose corners are whole. Weights w sum to 1.
// name makes a comment; candidate names the i-th candidate in the comments.
func (p *Problem) WriteLP(out io.Writer, name string, candidate func(i int) string) error {
	w := &lpWriter{Writer: bufio.NewWriter(out), p: p}
	for _, weight := range p.Weight {
		w.sum += float64(weight)
	}
	fmt.Fprintf(w, "\\ %s\n\\ %d candidates, %d moments, second view %g\n", oneLine(name), p.Candidates(), p.Moments, p.Second)
	for i := range p.Candidates() {
		fmt.Fprintf(w, "\\ y%d: %s\n", i, oneLine(candidate(i)))
	}
	w.objective()
	w.constraints()
	w.fixed()
	fmt.Fprintln(w, "Binaries")
	for i := range p.Candidates() {
		fmt.Fprintf(w, " y%d\n", i)
	}
	fmt.Fprintln(w, "End")
	return w.Flush()
}

type lpWriter struct {
	*bufio.Writer
	p       *Problem
	sum     float64 // of the weights
	terms   int     // on the present line
	scratch []byte
}

// termsPerLine keeps lines below the 560 characters at which old readers stop.
const termsPerLine = 10

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// term writes " + coefficient name".
func (w *lpWriter) term(coefficient float64, letter byte, i, m int) {
	b := w.scratch[:0]
	if w.terms++; w.terms > termsPerLine {
		b, w.terms = append(b, '\n'), 1
	}
	b = append(b, " + "...)
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

func (w *lpWriter) objective() {
	fmt.Fprint(w, "Maximize\n value:")
	p := w.p
	for m := range p.Moments {
		share := float64(p.Weight[m]) / w.sum
		for i := range p.Candidates() {
			if c := float64(p.Score[i*p.Moments+m]); c > 0 {
				w.term(share*c, 'x', i, m)
				if p.Second > 0 {
					w.term(share*c*p.Second, 'z', i, m)
				}
			}
		}
		fmt.Fprintln(w)
	}
	if p.Candidates() > 0 {
		fmt.Fprintln(w, " + 0 y0")
	}
}

func (w *lpWriter) constraints() {
	p := w.p
	fmt.Fprintln(w, "Subject To")
	letters := []byte{'x', 'z'}
	if p.Second == 0 {
		letters = letters[:1]
	}
	for m := range p.Moments {
		var seen []int
		for i := range p.Candidates() {
			if p.Score[i*p.Moments+m] > 0 {
				seen = append(seen, i)
			}
		}
		for _, letter := range letters {
			if len(seen) > 1 {
				fmt.Fprintf(w, " one_%c%d:", letter, m)
				for _, i := range seen {
					w.term(1, letter, i, m)
				}
				fmt.Fprintln(w, " <= 1")
			}
		}
		for _, i := range seen {
			fmt.Fprintf(w, " open%d_%d:", i, m)
			for _, letter := range letters {
				w.term(1, letter, i, m)
			}
			fmt.Fprintf(w, " - y%d <= 0\n", i)
		}
	}
	for g, group := range p.Groups {
		if len(group.Members) > group.Most {
			fmt.Fprintf(w, "\\ %s %s\n", oneLine(group.Rule), oneLine(group.Name))
			w.cap("group"+strconv.Itoa(g), group.Members, "<=", group.Most)
		}
	}
	all := make([]int, p.Candidates())
	for i := range all {
		all[i] = i
	}
	sign := "<="
	if p.Exact {
		sign = "="
	}
	if len(all) > 0 {
		w.cap("count", all, sign, p.Count)
	}
}

func (w *lpWriter) cap(name string, members []int, sign string, most int) {
	fmt.Fprintf(w, " %s:", name)
	for _, i := range members {
		w.term(1, 'y', i, -1)
	}
	fmt.Fprintf(w, " %s %d\n", sign, most)
}

// fixed writes the bounds of candidates that must be chosen.
func (w *lpWriter) fixed() {
	if len(w.p.In) == 0 {
		return
	}
	fmt.Fprintln(w, "Bounds")
	for _, i := range w.p.In {
		fmt.Fprintf(w, " y%d = 1\n", i)
	}
}
