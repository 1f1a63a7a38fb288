package seat

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// plain is a laid night with these points, by person and then period by hole.
func plain(points [][]int64, periods int, move int64) *laid {
	holes := len(points[0]) / periods
	l := &laid{periods: periods, holes: holes, points: points, ways: newWays[int64](periods, holes)}
	for range points {
		l.move = append(l.move, move)
	}
	l.class()
	return l
}

// N. Christofides, Graph Theory: An Algorithmic Approach, 1975, as GLPK's assign.mod
// has it: the least cost is 76, by one assignment only. And a textbook's table of
// five workers and four tasks: 265.
func TestPublishedAssignment(t *testing.T) {
	for _, c := range []struct {
		cost    [][]int64
		want    int64
		columns string
	}{
		{[][]int64{
			{13, 21, 20, 12, 8, 26, 22, 11}, {12, 36, 25, 41, 40, 11, 4, 8}, {35, 32, 13, 36, 26, 21, 13, 37}, {34, 54, 7, 8, 12, 22, 11, 40},
			{21, 6, 45, 18, 24, 34, 12, 48}, {42, 19, 39, 15, 14, 16, 28, 46}, {16, 34, 38, 3, 34, 40, 22, 24}, {26, 20, 5, 17, 45, 31, 37, 43},
		}, 76, "1 8 7 5 2 6 4 3"},
		{[][]int64{{90, 80, 75, 70}, {35, 85, 55, 65}, {125, 95, 90, 95}, {45, 110, 95, 115}, {50, 100, 90, 100}}, 265, ""},
	} {
		const each = 1000 // so much more is every seat worth than it costs: all holes are given
		var points [][]int64
		for _, row := range c.cost {
			var p []int64
			for _, x := range row {
				p = append(p, each-x)
			}
			points = append(points, p)
		}
		f := plain(points, 1, 0).solve(context.Background())
		holes := int64(len(c.cost[0]))
		if got := each*holes - f.value; got != c.want || f.bound != f.value || f.proved != ByPrices {
			t.Errorf("cost %d, bound %d, by %s; published %d", got, each*holes-f.bound, f.proved, c.want)
		}
		var columns []string
		for _, w := range f.all {
			columns = append(columns, strconv.Itoa(int(w[0])+1))
		}
		if got := strings.Join(columns, " "); c.columns != "" && got != c.columns {
			t.Errorf("columns %s; published %s", got, c.columns)
		}
	}
}

// grain is what one point of the tests' numbers stands for, so that what rounding
// of prices leaves is far below it.
const grain = 10_000

// drawPoints draws so many people's points in whole grains, some seats barred.
func drawPoints(rng *rand.Rand, people, seats int) [][]int64 {
	points := make([][]int64, people)
	for i := range points {
		for range seats {
			x := grain * rng.Int64N(1000)
			if rng.IntN(8) == 0 {
				x = barred
			}
			points[i] = append(points[i], x)
		}
	}
	return points
}

// python runs a program of Debian's python3 on JSON and reads its JSON.
func python(t *testing.T, program string, in, out any) {
	t.Helper()
	data, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("/usr/bin/python3", "-c", program)
	var said, failed bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = bytes.NewReader(data), &said, &failed
	if err := cmd.Run(); err != nil {
		t.Fatalf("python3 with python3-scipy: %v\n%s", err, failed.String())
	}
	if err := json.Unmarshal(said.Bytes(), out); err != nil {
		t.Fatal(err)
	}
}

// One period against scipy.optimize.linear_sum_assignment (Debian python3-scipy
// 1.10.1), which takes a barred seat as one worth nothing, as an empty chair is.
func TestOnePeriodMatchesScipy(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	var cases [][][]int64
	for range 400 {
		cases = append(cases, drawPoints(rng, 1+rng.IntN(20), 1+rng.IntN(12)))
	}
	var want []int64
	python(t, `
import json, sys, numpy
from scipy.optimize import linear_sum_assignment
out = []
for points in json.load(sys.stdin):
    a = numpy.maximum(numpy.array(points), 0)
    r, c = linear_sum_assignment(a, maximize=True)
    out.append(int(a[r, c].sum()))
print(json.dumps(out))`, cases, &want)
	if len(want) != len(cases) {
		t.Fatalf("scipy answered %d of %d cases", len(want), len(cases))
	}
	for k, points := range cases {
		if f := plain(points, 1, 0).solve(context.Background()); f.value != want[k] || f.bound != want[k] {
			t.Fatalf("case %d: %d, bound %d; scipy %d", k, f.value, f.bound, want[k])
		}
	}
}

// movesLP writes periods with moves as a program of arcs, which this room does not
// use: x is a seat, t at least 1 where somebody has two holes in two periods in a row.
func movesLP(l *laid) string {
	var goal, rows, shut, names strings.Builder
	x := func(i, p, h int) string { return fmt.Sprintf("x%d_%d_%d", i, p, h) }
	for i := range l.points {
		for p := range l.periods {
			for h := range l.holes {
				if l.points[i][p*l.holes+h] == barred {
					fmt.Fprintf(&shut, " %s = 0\n", x(i, p, h))
				} else {
					fmt.Fprintf(&goal, " + %d %s\n", l.points[i][p*l.holes+h], x(i, p, h))
				}
				fmt.Fprintf(&names, " %s\n", x(i, p, h))
				fmt.Fprintf(&rows, " %s %s\n", map[bool]string{true: "", false: "+"}[h == 0], x(i, p, h))
			}
			rows.WriteString(" <= 1\n")
			if p == 0 {
				continue
			}
			fmt.Fprintf(&goal, " - %d t%d_%d\n", l.move[i], i, p)
			for h := range l.holes {
				fmt.Fprintf(&rows, " t%d_%d - %s", i, p, x(i, p-1, h))
				for k := range l.holes {
					if k != h {
						fmt.Fprintf(&rows, " - %s", x(i, p, k))
					}
				}
				rows.WriteString(" >= -1\n")
			}
		}
	}
	for p := range l.periods {
		for h := range l.holes {
			for i := range l.points {
				fmt.Fprintf(&rows, " + %s", x(i, p, h))
			}
			rows.WriteString(" <= 1\n")
		}
	}
	return "Maximize\n value:" + goal.String() + "Subject To\n" + rows.String() + "Bounds\n" + shut.String() + "Binaries\n" + names.String() + "End\n"
}

// Three periods with moves against coinor-cbc (Debian), on the program of arcs.
func TestMovesMatchCBC(t *testing.T) {
	program, err := exec.LookPath("cbc")
	if err != nil {
		t.Fatal("cbc is missing: apt-get install coinor-cbc")
	}
	searched := 0
	for seed := range uint64(10) {
		rng := rand.New(rand.NewPCG(seed, 5))
		l := plain(drawPoints(rng, 6+rng.IntN(5), 3*(4+rng.IntN(3))), 3, grain*(100+rng.Int64N(400)))
		dir := t.TempDir()
		file, solution := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.txt")
		if err := os.WriteFile(file, []byte(movesLP(l)), 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(program, file, "ratioGap", "0", "allowableGap", "0", "solve", "solution", solution, "quit").CombinedOutput(); err != nil {
			t.Fatalf("cbc: %v\n%s", err, out)
		}
		said, err := os.ReadFile(solution)
		if err != nil {
			t.Fatal(err)
		}
		first, _, _ := strings.Cut(string(said), "\n")
		fields := strings.Fields(first)
		want, err := strconv.ParseFloat(fields[len(fields)-1], 64)
		if err != nil || !strings.HasPrefix(first, "Optimal") {
			t.Fatalf("cbc: %q", first)
		}
		f := l.solve(context.Background())
		if want < 0 {
			want = -want // cbc prints what it minimises
		}
		if math.Abs(float64(f.value)-want) > grain/2 || f.proved == NotProved {
			t.Errorf("seed %d: %d by %s; cbc %g", seed, f.value, f.proved, want)
		}
		if f.proved == BySearch {
			searched++
		}
	}
	if searched == 0 {
		t.Error("no case needed a search: the cases are too easy")
	}
}
