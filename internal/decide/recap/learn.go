package recap

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/survey/play"
)

// How many bursts the assumptions weigh as much as, in all and for each phase's keeping
// (own choice: ten games of 300 bursts move a share half of the way).
const (
	priorBursts = 3000.0
	priorKept   = 300.0
)

// Fact is how much a hole was used, beside how much the plan expects: shares of all bursts
// of holes that were worked, 0 to 1.
type Fact struct {
	Hole           string
	Taken                  // pictures of periods
	Expected, Seen float64 // shares, 0 to 1
}

// Learnt is what the frames of a game make of the assumptions.
type Learnt struct {
	Assumptions play.Assumptions
	Before      play.Assumptions
	Bursts      int // that it rests on
	Facts       []Fact
}

// Learn fits the shares of the moments' phases to how much each hole was used, and their
// news weights to what was kept. A hole's bursts are Poisson with a mean of the hours worked
// there times what it sees of each phase (sight's score) times the phase's share; the
// shares are those of most probability under the prior, by expectation and maximisation,
// each step of which shares a hole's bursts out over the phases (Dempster, Laird and Rubin
// 1977). A phase's weight follows its rate of keepers over that of all. Holes without hours
// or frames tell nothing.
func Learn(o *Outlook, uses []Use) Learnt {
	out := Learnt{Before: o.arena.Playing()}
	var worked []Use
	var sees [][]float64
	for _, u := range uses {
		if p := o.holes[u.Hole]; p != nil && u.Stage == "" && u.Hours > 0 {
			worked, sees = append(worked, u), append(sees, p.sees)
			out.Bursts += u.InPlay.Bursts
		}
	}
	out.Assumptions = out.Before
	if out.Bursts > 0 {
		out.fit(worked, sees)
		out.facts(worked, sees)
	}
	return out
}

// Steps of the fit, and the change of a share that ends it.
const (
	mostRounds = 500
	settled    = 1e-9
)

// fit moves the shares and weights.
func (l *Learnt) fit(worked []Use, sees [][]float64) {
	before := normal(l.Before.Share[:])
	share := append([]float64(nil), before...)
	var resp, kept []float64
	for range mostRounds {
		resp, kept = expect(worked, sees, share)
		// Expected bursts of a phase were all holes to see it as they do: what was looked at.
		looked := make([]float64, len(share))
		for i, u := range worked {
			for p := range share {
				looked[p] += u.Hours * sees[i][p]
			}
		}
		next, change := make([]float64, len(share)), 0.0
		scale := 0.0
		for p := range share {
			scale += before[p] * looked[p]
		}
		perLook := float64(l.Bursts) / max(scale, 1e-12)
		for p := range share {
			next[p] = (priorBursts*before[p] + resp[p]) / (priorBursts + perLook*looked[p])
		}
		next = normal(next)
		for p := range share {
			change = max(change, math.Abs(next[p]-share[p]))
		}
		if share = next; change < settled {
			break
		}
	}
	all, sum := 0.0, total(l.Before.Share[:])
	for _, u := range worked {
		all += float64(u.InPlay.Kept)
	}
	rate := all / float64(l.Bursts)
	for p := range share {
		l.Assumptions.Share[p] = share[p] * sum
		if rate > 0 {
			l.Assumptions.Weight[p] = l.Before.Weight[p] * (kept[p]/rate + priorKept) / (resp[p] + priorKept)
		}
	}
}

// expect shares each hole's bursts and keepers out over the phases.
func expect(worked []Use, sees [][]float64, share []float64) (bursts, kept []float64) {
	bursts, kept = make([]float64, len(share)), make([]float64, len(share))
	for i, u := range worked {
		sum := 0.0
		for p := range share {
			sum += share[p] * sees[i][p]
		}
		for p := range share {
			if part := share[p] * sees[i][p] / max(sum, 1e-12); sum > 0 {
				bursts[p] += part * float64(u.InPlay.Bursts)
				kept[p] += part * float64(u.InPlay.Kept)
			}
		}
	}
	return bursts, kept
}

// facts sets what was used beside what was expected.
func (l *Learnt) facts(worked []Use, sees [][]float64) {
	share := normal(l.Before.Share[:])
	expected := make([]float64, len(worked))
	for i, u := range worked {
		for p := range share {
			expected[i] += u.Hours * share[p] * sees[i][p]
		}
	}
	expected = normal(expected)
	for i, u := range worked {
		l.Facts = append(l.Facts, Fact{u.Hole, u.InPlay, expected[i], float64(u.InPlay.Bursts) / float64(l.Bursts)})
	}
}

func total(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

// normal returns shares of 1.
func normal(v []float64) []float64 {
	out, sum := make([]float64, len(v)), total(v)
	for i, x := range v {
		out[i] = x / max(sum, 1e-300)
	}
	return out
}

// YAML writes the assumptions as the file that choose --play takes.
func (l Learnt) YAML() []byte {
	list := func(of []float64) string {
		var parts []string
		for _, p := range play.Phases() {
			parts = append(parts, fmt.Sprintf("%s: %.4g", p, of[p]))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return fmt.Appendf(nil, "# Learnt from %d bursts; what was assumed before weighs as much as %.0f.\nshares: %s\nweights: %s\n",
		l.Bursts, priorBursts, list(l.Assumptions.Share[:]), list(l.Assumptions.Weight[:]))
}
