package solve

import (
	"context"
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

// Two assignments with known optima. 8 x 8: N. Christofides, Graph Theory: An
// Algorithmic Approach, 1975, as GLPK's assign.mod has it: 76, unique. 5 x 4: a
// textbook table of workers and tasks, one worker left over: 265.
func TestPublishedAssignments(t *testing.T) {
	eight := [][]float64{
		{13, 21, 20, 12, 8, 26, 22, 11}, {12, 36, 25, 41, 40, 11, 4, 8}, {35, 32, 13, 36, 26, 21, 13, 37}, {34, 54, 7, 8, 12, 22, 11, 40},
		{21, 6, 45, 18, 24, 34, 12, 48}, {42, 19, 39, 15, 14, 16, 28, 46}, {16, 34, 38, 3, 34, 40, 22, 24}, {26, 20, 5, 17, 45, 31, 37, 43},
	}
	res := solver(t, assignment(eight)).Solve(context.Background(), 0, nil)
	var columns []string
	for _, k := range res.Set {
		columns = append(columns, strconv.Itoa(k%8+1))
	}
	if got := strings.Join(columns, " "); res.Status != Optimal || math.Abs(res.Value+76) > 1e-6 || got != "1 8 7 5 2 6 4 3" {
		t.Errorf("8 x 8: %s, cost %g, columns %s; published 76 and 1 8 7 5 2 6 4 3", res.Status, -res.Value, got)
	}
	five := [][]float64{{90, 80, 75, 70}, {35, 85, 55, 65}, {125, 95, 90, 95}, {45, 110, 95, 115}, {50, 100, 90, 100}}
	if res := solver(t, assignment(five)).Solve(context.Background(), 0, nil); res.Status != Optimal || math.Abs(res.Value+265) > 1e-6 {
		t.Errorf("5 x 4: %s, cost %g; published 265", res.Status, -res.Value)
	}
}

// cbc solves a linear program by its LP file with Debian's coinor-cbc.
func cbc(t *testing.T, p *Program) (value float64, feasible bool) {
	t.Helper()
	program, err := exec.LookPath("cbc")
	if err != nil {
		t.Fatal("cbc is missing: apt-get install coinor-cbc")
	}
	dir := t.TempDir()
	file, solution := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.txt")
	var text strings.Builder
	if err := p.Worth.(Linear).WriteLP(&text, p, t.Name(), func(i int) string { return fmt.Sprint("column ", i) }); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, file, "ratioGap", "0", "allowableGap", "0", "solve", "solution", solution, "quit").CombinedOutput()
	if err != nil {
		t.Fatalf("cbc: %v\n%s", err, out)
	}
	said, err := os.ReadFile(solution)
	if err != nil {
		t.Fatalf("cbc wrote no solution: %v\n%s", err, out)
	}
	first, _, _ := strings.Cut(string(said), "\n")
	if strings.Contains(strings.ToLower(first), "infeasible") {
		return 0, false
	}
	fields := strings.Fields(first)
	v, err := strconv.ParseFloat(fields[len(fields)-1], 64)
	if err != nil || !strings.HasPrefix(first, "Optimal") {
		t.Fatalf("cbc: %q", first)
	}
	return v, true
}

// Seeded assignment-like programs, larger than can be tried one by one, against
// coinor-cbc on the file that the room writes.
func TestLinearMatchesCBC(t *testing.T) {
	feasible, infeasible := 0, 0
	for seed := range uint64(16) {
		rng := rand.New(rand.NewPCG(seed, 11))
		cost := make([][]float64, 6)
		for i := range cost {
			for range 6 {
				cost[i] = append(cost[i], float64(rng.IntN(100)))
			}
		}
		p := assignment(cost)
		for range 5 { // beside the assignment, caps on odd groups and one that asks
			row := Row{Most: 1 + rng.IntN(2)}
			for i := range p.Columns {
				if rng.IntN(4) == 0 {
					row.Columns = append(row.Columns, i)
				}
			}
			row.Least = rng.IntN(2)
			p.Rows = append(p.Rows, row)
		}
		res := solver(t, p).Solve(context.Background(), 0, nil)
		want, ok := cbc(t, &p)
		switch {
		case !ok && res.Status == Infeasible:
			infeasible++
		case ok && res.Status == Optimal && math.Abs(res.Value-want) < 1e-5:
			feasible++
		default:
			t.Errorf("seed %d: %s %.6f, cbc %.6f, feasible %v", seed, res.Status, res.Value, want, ok)
		}
	}
	if feasible < 5 {
		t.Errorf("%d feasible and %d infeasible programs", feasible, infeasible)
	}
}
