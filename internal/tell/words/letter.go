package words

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// Spoken names a place as people at the rink say it: "goal line, 33 in back, end B,
// bench side".
func Spoken(c choose.Candidate, sys unit.System) string {
	said := c.Place.Say(sys)
	if _, bare := c.Place.Station.Get(); bare {
		return said
	}
	corner := c.Place.Corner.String()
	end, side, _ := strings.Cut(corner, "-")
	return fmt.Sprintf("%s, end %s, %s side", strings.TrimPrefix(said, corner+" "), end, side)
}

// asked is a new hole as the letter's table tells it.
type asked struct {
	number int
	choose.Choice
}

var askedFor = table.Fields[asked]{
	number("no.", "number", "%.0f", func(h asked) float64 { return float64(h.number) }),
	text("place", "place", func(h asked, sys unit.System) string { return Spoken(h.Candidate, sys) }),
	length("above the ice", "height_m", func(h asked) unit.Length { return h.Hole.Height }),
	text("pane", "pane", func(h asked, _ unit.System) string { return h.Hole.Pane }),
	text("best view of", "best_view_share", func(h asked, _ unit.System) string { return Percent(h.Best) }),
	text("only view of", "only_view_share", func(h asked, _ unit.System) string { return fmt.Sprintf("%.1f %%", 100*h.Only) }),
	text("needed most for", "serves", func(h asked, _ unit.System) string { return h.Serves }),
}

// Asked is the table of a step's new holes, numbered as on the letter's map.
func Asked(s choose.Step, sys unit.System) table.Table {
	var rows []asked
	for _, h := range s.Story.Each {
		if !h.IsCut() {
			rows = append(rows, asked{len(rows) + 1, h})
		}
	}
	return askedFor.Of("", rows, sys)
}

// AskedInShort says in two sentences what a step asks for, what it costs and brings.
func AskedInShort(a choose.Answer, s choose.Step) string {
	stay := "no hole is cut today"
	switch kept, gone := len(s.Kept()), len(s.GivenUp); {
	case kept > 0 && gone == 0:
		stay = "all that are cut stay: " + say.Names(slices.Sorted(slices.Values(ids(s.Kept()))))
	case kept > 0:
		stay = fmt.Sprintf("%s stay, %s given up: a whole pane in place of each", say.Names(slices.Sorted(slices.Values(ids(s.Kept())))), say.Names(slices.Sorted(slices.Values(ids(s.GivenUp)))))
	case gone > 0:
		stay = fmt.Sprintf("%s given up: a whole pane in place of each", say.Names(slices.Sorted(slices.Values(ids(s.GivenUp)))))
	}
	panes := "no pane"
	if s.Bill.Panes > 0 {
		panes = say.Count(s.Bill.Panes, "pane")
	}
	return fmt.Sprintf("Please allow %s in the glass; %s. It costs %d %s%s, with %s to buy and the ice closed for %.1f days of work, and brings %s of the best that the rules allow%s.",
		say.Count(len(s.Cut()), "new photo hole"), stay, s.Bill.Money, a.Costs.Currency, invented(a), panes, a.Costs.Days(s.Bill),
		downPercent(s.Value/a.Value), besideToday(a))
}

// besideToday says what the holes that are cut today are worth, and whether they keep
// the rules at all.
func besideToday(a choose.Answer) string {
	today := a.Ladder[0]
	if len(today.Holes) == 0 {
		return ""
	}
	said := fmt.Sprintf("; today's holes bring %s", downPercent(today.Value/a.Value))
	if a.Today.Verdict != rules.Pass {
		said += ", but are not proved to keep the rules"
	}
	return said
}

func invented(a choose.Answer) string {
	if a.Costs.Invented {
		return " (costs are invented)"
	}
	return ""
}

func downPercent(share float64) string { return fmt.Sprintf("%.1f %%", roundedDown(1000*share)/10) }

// StepWhy says what a step's holes see together, and what none of them does.
func StepWhy(s choose.Step) string {
	said := fmt.Sprintf("Together the %s see %s of a game's news in pictures worth taking", say.Count(len(s.Holes), "hole"), downPercent(s.Story.Seen))
	if s.Story.Misses != "" {
		said += fmt.Sprintf("; what they miss is %s more than anything else", s.Story.Misses)
	}
	return said + ". Best view: share of the news that no other hole shows better. Only view: share that no other hole shows at all."
}

// StepsThatMatter is the table of today, of the best that keeps all holes, of what is
// asked, which stands out, and of the best of all.
func StepsThatMatter(a choose.Answer, s choose.Step, sys unit.System) table.Table {
	var steps []choose.Step
	add := func(more choose.Step) {
		if !slices.ContainsFunc(steps, func(had choose.Step) bool { return had.Value == more.Value && had.Bill == more.Bill }) {
			steps = append(steps, more)
		}
	}
	add(a.Ladder[0])
	if keep, ok := a.Keeping(); ok {
		add(keep)
	}
	add(s)
	add(a.Ladder[len(a.Ladder)-1])
	columns := rungs(a.Costs).Pick("step", "holes", "share", "panes_to_buy", "cost_"+strings.ToLower(a.Costs.Currency), "days_closed")
	t := columns.Of("", rungsOf(a, steps), sys)
	for _, row := range steps {
		t.Strong = append(t.Strong, row.Value == s.Value && row.Bill == s.Bill)
	}
	return t
}

// CostNote says whose the costs are and what they stand for.
func CostNote(a choose.Answer) string {
	from := "The costs are the asker's."
	switch {
	case a.Costs.Invented:
		from = "The costs are invented: nobody has quoted them yet."
	case len(a.Costs.Silent) > 0:
		from = CostsNote(a.Costs, "")
	}
	return strings.TrimSpace(LadderSum(a) + " " + from + " Panes: to buy; days: of work with the ice closed.")
}

// GainInShort says in a line what the holes bring over shooting through their panes;
// none when nobody recorded what the panes are made of.
func GainInShort(gains []gain.Answer) string {
	if len(gains) == 0 {
		return "Not worked out: what the panes are made of is not surveyed."
	}
	var m gain.Means
	n := float64(len(gains))
	for _, g := range gains {
		m.HolePass += g.Within.HolePass / n
		m.PanePass += g.Within.PanePass / n
		m.NewContrast += g.Within.NewContrast / n
		m.WornContrast += g.Within.WornContrast / n
	}
	return fmt.Sprintf("Through a hole the whole contrast reaches the camera, with %s of light lost at its rim; through the pane %s of a dark jersey's fine contrast does when it is new, %s when it is worn, and %s of light is lost.",
		stops(m.HolePass), Percent(m.NewContrast), Percent(m.WornContrast), stops(m.PanePass))
}

// RiskInShort says in two sentences what comes through open holes, and what to keep
// clear behind them.
func RiskInShort(guards []puck.Guard, sys unit.System) string {
	var all puck.Passes
	var far unit.Length
	var aside unit.Angle
	for _, g := range guards {
		all.PerHour += g.Game.PerHour
		all.PerHourHigh += g.Game.PerHourHigh
		if g.Sector.Bounded() {
			far, aside = max(far, g.Sector.Clear), max(aside, g.Sector.To, -g.Sector.From)
		}
	}
	if far == 0 {
		return "By the model of struck pucks next to none passes an open hole; sticks and hands may."
	}
	return fmt.Sprintf("With %s open at once, %s pucks come through in 1000 hours of play, by own judgement of how many are struck, at %.0f J at most. Behind an open hole keep clear to %s from the glass, %.0f deg to either side.",
		say.Count(len(guards), "hole"), PerThousandHours(all), most(guards), Within(far, sys), outward(aside.Degrees()))
}

// WhomToAsk says who decides what on work at the glass.
func WhomToAsk() []string {
	return []string{
		"Glass maker: may these very panes have a hole, and who makes it, as licensed practice asks?",
		"League: does its document in force allow holes here?",
		"Local codes: whoever inspects the hall.",
		"Rink operator: covers, tethers, and when the ice is closed.",
	}
}

func most(guards []puck.Guard) (joules float64) {
	for _, g := range guards {
		joules = max(joules, g.MostJ)
	}
	return joules
}

// HowSure says for what a step is proved, and what that does not say.
func HowSure(a choose.Answer, s choose.Step) string {
	var sets []string
	for _, set := range a.Sets.All() {
		sets = append(sets, set.Name)
	}
	work := fmt.Sprintf("newly cuts no more than %d", s.NewCuts)
	switch s.Kind {
	case choose.KeepStep:
		work = "keeps all that is cut and " + work
	case choose.SpendStep:
		work = "costs no more"
	}
	proof := "is worth more"
	if !s.Proved {
		proof = fmt.Sprintf("is worth over %.2f %% more", 100*(s.Bound/s.Value-1))
	}
	return fmt.Sprintf("Proved for these %s moments of play (seed %d): no set of holes that keeps to the rules and %s %s. Over all moments that may be drawn the best set's value is within %.1f %% of this (95 %%). The rules: %s.",
		thousands(a.Moments), a.Seed, work, proof, 100*a.Margin/a.Value, strings.Join(sets, "; "))
}

func thousands(n int) string {
	s := strconv.Itoa(n)
	for k := len(s) - 3; k > 0; k -= 3 {
		s = s[:k] + "," + s[k:]
	}
	return s
}
