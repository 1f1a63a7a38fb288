package cut

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Refusal says why a hole has no drawing.
type Refusal struct {
	Hole    string
	Reasons []say.Sentence
	Units   unit.System // the plan's
}

// Error joins the reasons in the plan's units.
func (r *Refusal) Error() string {
	return fmt.Sprintf("hole %s: no drawing: %s", r.Hole, r.Words())
}

// Words joins the reasons in the plan's units, without the hole's name.
func (r *Refusal) Words() string { return joined(r.Reasons, r.Units) }

func joined(list []say.Sentence, sys unit.System) string {
	return strings.Join(say.All(list, sys), "; ")
}

func (p ShopOrder) refuse(h glass.Hole, why ...say.Sentence) *Refusal {
	return &Refusal{h.ID, why, p.Arena.Units}
}

// stand is the one policy on a hole that is not allowed as it is:
//
//   - one still to be made that misses what its trade asks, or whose plan says
//     that it goes without a cover, is refused: nobody is handed a drawing to
//     make it from;
//   - one that fails a rule, or that exists already, is drawn, and every sheet
//     says NOT PASSED and why;
//   - one of which the survey lacks too much to say is drawn, and every sheet says
//     NOT PROVED and what is lacking.
//
// What is refused is returned; the rest stays in the job.
func (j *Job) stand() []say.Sentence {
	if j.Exists() {
		return nil
	}
	why := j.NotPassed
	j.NotPassed = nil
	if c, known := j.Hole.Cover.Get(); known && !c.Present {
		why = append(why, say.Make("the plan says that it has no cover; no hole is drawn without one: plan a cover first"))
	}
	return why
}

// heed takes the verdict of the rules. What the trade asks is judged with the
// hole's own distances already.
func (j *Job) heed(findings []rules.Finding) {
	for _, f := range findings {
		switch {
		case f.Set == rules.Trade:
		case f.Status == rules.Fail:
			j.NotPassed = append(j.NotPassed, say.Make("%s (rule %s of %s)", f.Sentence, f.Rule, f.Set))
		case f.Status == rules.Unknown:
			j.NotProved = append(j.NotProved, say.Make("%s (rule %s of %s)", f.Sentence, f.Rule, f.Set))
		}
	}
}
