package choose

import (
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// demoStudy prepares the demo arena under common practice with places at a
// step in millimetres, 0.1 m from the panes' edges.
func demoStudy(t testing.TB, step float64, moments int) *Study {
	t.Helper()
	return demoSeed(t, step, moments, DefaultOptions().Seed)
}

func demoSeed(t testing.TB, step float64, moments int, seed uint64) *Study {
	t.Helper()
	f, err := examples.Files.Open(examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := arena.Read(examples.Demo, f)
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	o := DefaultOptions()
	o.Step, o.Moments, o.Plain, o.Alternatives = unit.Length(step)*unit.Millimetre, moments, true, 0
	o.Seed = seed
	s, err := Prepare(context.Background(), a, sets, k, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// open is the study's problem without the barred places.
func (s *Study) openProblem() Problem {
	p := s.problem
	p.Score = p.Score[:s.open*p.Moments]
	p.Groups = nil
	for _, g := range s.problem.Groups {
		var in []int
		for _, i := range g.Members {
			if i < s.open {
				in = append(in, i)
			}
		}
		if g.Members = in; len(in) > 0 {
			p.Groups = append(p.Groups, g)
		}
	}
	p.Count = s.open
	return p
}

// processor returns the processor time that the test has used so far: on a busy
// machine it tells more than the clock.
func processor(t testing.TB) time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		t.Fatal(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// Ranking and search to the proof, at growing numbers of candidates and
// moments.
func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct {
		step    float64
		moments int
	}{{400, 20_000}, {180, 20_000}, {88, 2_000}, {88, 20_000}, {44, 20_000}, {88, 200_000}} {
		s := demoStudy(b, c.step, c.moments)
		b.Run(fmt.Sprintf("%dx%d", s.open, c.moments), func(b *testing.B) {
			p := s.openProblem()
			begun := processor(b)
			for b.Loop() {
				v, err := NewSolver(context.Background(), p)
				if err != nil {
					b.Fatal(err)
				}
				if res := v.Solve(context.Background(), 0, nil); res.Status != solve.Optimal {
					b.Fatal(res.Status)
				}
			}
			b.ReportMetric(float64((processor(b)-begun).Microseconds())/1e3/float64(b.N), "cpu-ms/op")
		})
	}
}

// The same LP file solved by coinor-cbc and the same problem by the solver;
// the ratio of their times is reported, and their values must agree.
func BenchmarkAgainstCBC(b *testing.B) {
	program, err := exec.LookPath("cbc")
	if err != nil {
		b.Fatal("cbc is missing: apt-get install coinor-cbc")
	}
	for _, moments := range []int{100, 400} {
		s := demoStudy(b, 180, moments)
		p := s.openProblem()
		file := filepath.Join(b.TempDir(), "p.lp")
		f, err := os.Create(file)
		if err != nil {
			b.Fatal(err)
		}
		if err := p.WriteLP(f, "benchmark", func(i int) string { return fmt.Sprint(i) }); err != nil {
			b.Fatal(err)
		}
		if err := f.Close(); err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("%dx%d", s.open, moments), func(b *testing.B) {
			var ours, theirs time.Duration
			for b.Loop() {
				begun := time.Now()
				v, err := NewSolver(context.Background(), p)
				if err != nil {
					b.Fatal(err)
				}
				res := v.Solve(context.Background(), 0, nil)
				ours += time.Since(begun)
				begun = time.Now()
				if out, err := exec.Command(program, file, "ratioGap", "0", "allowableGap", "0", "solve", "quit").CombinedOutput(); err != nil {
					b.Fatalf("%v\n%s", err, out)
				}
				theirs += time.Since(begun)
				if math.IsNaN(res.Value) || res.Status != solve.Optimal {
					b.Fatal(res.Status)
				}
			}
			b.ReportMetric(float64(ours.Microseconds())/1e3/float64(b.N), "ms/ours")
			b.ReportMetric(float64(theirs.Microseconds())/1e3/float64(b.N), "ms/cbc")
			b.ReportMetric(float64(theirs)/float64(ours), "cbc/ours")
		})
	}
}
