package choose

import (
	"fmt"
	"io"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/decide/solve"
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
// Where only K are worked at once, u<i>_<f>, whole, is 1 when candidate i is worked
// in phase f:
//
//	x_im + z_im <= u_if,  u_if <= y_i,  sum over i of u_if <= K
//
// Only pairs with c_im > 0 have variables. For a given set y the best x and z
// give each moment its two best chosen scores, the better one first since d <
// 1: that is the value of the set. x and z need not be declared whole: given
// y they are a transport problem, whose corners are whole. Weights w sum to 1.
// name makes a comment; candidate names the i-th candidate in the comments.
func (p *Problem) WriteLP(out io.Writer, name string, candidate func(i int) string) error {
	program := p.program(nil)
	w := lpFile{solve.NewLPFile(out, &program, fmt.Sprintf("%s: %d candidates, %d moments, second view %g", name, p.Candidates(), p.Moments, p.Second), candidate), p}
	w.objective()
	w.views()
	others := w.crews()
	w.Rows(func(r int) string {
		if r == 0 {
			return "count"
		}
		return "group" + strconv.Itoa(r-1)
	}, func(r int) string {
		if r == 0 {
			return ""
		}
		return p.Groups[r-1].Rule + " " + p.Groups[r-1].Name
	})
	w.Caps(func(int) string { return "budget, less what is spent in any case" })
	return w.End(others...)
}

type lpFile struct {
	*solve.LPFile
	p *Problem
}

func (w *lpFile) objective() {
	p := w.p
	w.Maximize()
	for m, share := range p.shares() {
		for i := range p.Candidates() {
			if c := float64(p.Score[i*p.Moments+m]); c > 0 {
				w.Term(share*c, 'x', i, m)
				if p.Second > 0 {
					w.Term(share*c*p.Second, 'z', i, m)
				}
			}
		}
		fmt.Fprintln(w)
	}
	if p.Candidates() > 0 {
		fmt.Fprintln(w, " + 0 y0")
	}
}

// views states that a moment has one best and one second view, and that only
// chosen candidates are either.
func (w *lpFile) views() {
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
					w.Term(1, letter, i, m)
				}
				fmt.Fprintln(w, " <= 1")
			}
		}
		for _, i := range seen {
			fmt.Fprintf(w, " open%d_%d:", i, m)
			for _, letter := range letters {
				w.Term(1, letter, i, m)
			}
			if p.People > 0 {
				fmt.Fprintf(w, " - u%d_%d <= 0\n", i, p.Phase[m])
			} else {
				fmt.Fprintf(w, " - y%d <= 0\n", i)
			}
		}
	}
}

// crews states that of the set only so many are worked in each phase; it returns the
// names of their variables.
func (w *lpFile) crews() (names []string) {
	p := w.p
	if p.People == 0 {
		return nil
	}
	for f := range int(slices.Max(p.Phase)) + 1 {
		for i := range p.Candidates() {
			names = append(names, fmt.Sprintf("u%d_%d", i, f))
			fmt.Fprintf(w, " of%d_%d: u%d_%d - y%d <= 0\n", i, f, i, f, i)
		}
		fmt.Fprintf(w, " crew%d:", f)
		for i := range p.Candidates() {
			w.Term(1, 'u', i, f)
		}
		fmt.Fprintf(w, " <= %d\n", p.People)
	}
	return names
}
