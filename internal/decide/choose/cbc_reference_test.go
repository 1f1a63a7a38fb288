package choose

import (
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
)

// cbc solves a problem by its LP file with Debian's coinor-cbc.
func cbc(t testing.TB, p *Problem) (value float64, feasible bool) {
	t.Helper()
	program, err := exec.LookPath("cbc")
	if err != nil {
		t.Fatal("cbc is missing: apt-get install coinor-cbc")
	}
	dir := t.TempDir()
	file, solution := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.txt")
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := p.WriteLP(f, t.Name(), func(i int) string { return fmt.Sprint("candidate ", i) }); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, file, "ratioGap", "0", "allowableGap", "0", "solve", "solution", solution, "quit").CombinedOutput()
	if err != nil {
		t.Fatalf("cbc: %v\n%s", err, out)
	}
	text, err := os.ReadFile(solution)
	if err != nil {
		t.Fatalf("cbc wrote no solution: %v\n%s", err, out)
	}
	first, _, _ := strings.Cut(string(text), "\n")
	// "Optimal - objective value 0.123" or "Infeasible - objective value ..."
	if strings.HasPrefix(first, "Infeasible") || strings.HasPrefix(first, "Integer infeasible") {
		return 0, false
	}
	if !strings.HasPrefix(first, "Optimal") {
		t.Fatalf("cbc: %s", first)
	}
	fields := strings.Fields(first)
	v, err := strconv.ParseFloat(fields[len(fields)-1], 64)
	if err != nil {
		t.Fatalf("cbc: %q", first)
	}
	return math.Abs(v), true // cbc prints the value of minimising its negative
}

// Seeded instances against coinor-cbc on the same file: equal to 1e-6.
func TestSolveMatchesCBC(t *testing.T) {
	feasible, infeasible := 0, 0
	for seed := range uint64(24) {
		p := instance(1000+seed, 14, 25)
		p.Count = 3 + int(seed%3)
		res := solver(t, p).Solve(context.Background(), 0, nil)
		want, ok := cbc(t, &p)
		if !ok {
			infeasible++
			if res.Status != solve.Infeasible {
				t.Errorf("seed %d: %s, cbc finds it infeasible", seed, res.Status)
			}
			continue
		}
		feasible++
		if math.Abs(res.Value-want) > 1e-6 {
			t.Errorf("seed %d: value %.9f, cbc %.9f", seed, res.Value, want)
		}
	}
	if feasible < 10 || infeasible < 1 {
		t.Errorf("%d feasible and %d infeasible instances: not enough of each", feasible, infeasible)
	}
}

// Each step of the ladder and each point of the frontier against coinor-cbc on the
// same program, its count of new cuts and its budget among the rows: equal to 1e-6.
func TestLadderMatchesCBC(t *testing.T) {
	for seed := range uint64(3) {
		s := laddered(t, 50+seed, 12, 20)
		out := ladderOf(s)
		for _, step := range out.Ladder[1:] {
			var keep []int
			if step.Kind == KeepStep {
				keep = s.today()
			}
			q := s.atMost(step.NewCuts, keep)
			if want, ok := cbc(t, &q); !ok || math.Abs(step.Value-want) > 1e-6 {
				t.Errorf("seed %d, %s %d: %.9f, cbc %.9f", seed, step.Kind, step.NewCuts, step.Value, want)
			}
		}
		for _, step := range out.Frontier[1:] {
			q := s.within(unit.Known(step.Bill.Money))
			if want, ok := cbc(t, &q); !ok || math.Abs(step.Value-want) > 1e-6 {
				t.Errorf("seed %d, %d spent: %.9f, cbc %.9f", seed, step.Bill.Money, step.Value, want)
			}
		}
	}
}
