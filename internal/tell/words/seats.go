package words

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// SeatsText tells the seats of a season, or of one of its games.
func SeatsText(s seat.Answer, sys unit.System) string {
	p := page{sys: sys}
	switch {
	case s.Only != "":
		night, _ := s.Night()
		p.night(night)
		p.other(s, night)
	case s.Compare != nil:
		p.season(s)
	default:
		for _, n := range s.Season.Nights {
			p.say("%s\n\n%s\n", n.Game, SeatTable(n).Text())
			if kept := KeptHoles(n); len(kept) > 0 {
				p.say("%s\n\n", strings.Join(kept, "\n"))
			}
		}
		if len(s.Season.Nights) == 0 {
			p.say("No game is played.\n")
		}
	}
	p.redo(s.Redo)
	return p.String()
}

// redo tells the seats that a changed plan touches.
func (p *page) redo(all []seat.Redo) {
	if len(all) == 0 {
		if all != nil {
			p.say("\nThe changed plan touches no seat.\n")
		}
		return
	}
	t := table.New("game", "period", "hole", "who", "redo: the hole is")
	for _, r := range all {
		why := map[seat.Touched]string{seat.Gone: "gone", seat.IsOff: "off", seat.Refused: "refused by the rules"}[r.Why]
		if r.Why == seat.Moved {
			why = "moved by " + say.Make("%v", r.By).In(p.sys)
		}
		t.Add(r.Game, fmt.Sprint(r.Seat.Period), r.Seat.Hole, r.Seat.Who, why)
	}
	p.say("\n%s\n", t.Text())
	p.lines("The plan changed since: nothing was moved. Give these seats anew.")
}

// SeatTable tells who works each hole, period by period.
func SeatTable(n seat.Seating) table.Table {
	var holes []string
	periods := 0
	at := map[seat.Seat]string{}
	for _, s := range n.Seats {
		if !slices.Contains(holes, s.Hole) {
			holes = append(holes, s.Hole)
		}
		periods = max(periods, s.Period)
		at[seat.Seat{Period: s.Period, Hole: s.Hole}] = s.Who
	}
	t := table.New("hole")
	for k := range periods {
		t.Columns = append(t.Columns, table.Column{Head: fmt.Sprint("period ", k+1)})
	}
	slices.Sort(holes)
	for _, h := range holes {
		row := []string{h}
		for k := range periods {
			row = append(row, at[seat.Seat{Period: k + 1, Hole: h}])
		}
		t.Add(row...)
	}
	return t
}

// Outcomes are the columns of what a night brought each person.
func Outcomes() table.Fields[seat.Outcome] {
	return table.Fields[seat.Outcome]{
		left("who", "who", func(o seat.Outcome) string { return o.Who }),
		numbered("periods", "periods", func(o seat.Outcome) string { return fmt.Sprint(o.Periods) }),
		explained(share("of their best", "share", seat.Outcome.Share), "what they have of the best that they could have had alone"),
		explained(numbered("counts", "weight", func(o seat.Outcome) string { return fmt.Sprintf("%.3g", o.Weight) }), "how much their night counts by the ledger: half for each night further ahead"),
		left("no seat", "why", func(o seat.Outcome) string { return string(o.Why) }),
	}
}

// night tells one game.
func (p *page) night(n seat.Seating) {
	p.say("%s\n\n%s\n", n.Game, SeatTable(n).Text())
	p.say("%s\n", Outcomes().Of("", n.People, unit.Metric).Text())
	p.lines("counts: how much their night counts by the season's ledger; who is a night further ahead counts half.")
	p.lines(KeptHoles(n)...)
	p.lines(NoSeats(n)...)
	p.lines(SeatProof(n.Proof))
}

// NoSeats says who has no seat, and why.
func NoSeats(n seat.Seating) (out []string) {
	for _, why := range seat.Whys() {
		var who []string
		for _, o := range n.People {
			if o.Why == why {
				who = append(who, o.Who)
			}
		}
		if len(who) > 0 {
			out = append(out, fmt.Sprintf("No seat for %s: %s.", say.Names(who), whyWords(why)))
		}
	}
	return out
}

func whyWords(why seat.Why) string {
	return map[seat.Why]string{
		seat.NoHole:    "there is no hole that they can work",
		seat.KeptAll:   "the holes that they can work are kept for others",
		seat.CameLate:  "asked after the closing time, and the others have every hole that they can work",
		seat.MustFirst: "firm requests have every hole that they can work",
		seat.Others:    "others have the holes that they can work, and all together have more of the night this way, each counted by the season's ledger",
	}[why]
}

// SeatProof says how sure it is that no seating is better.
func SeatProof(p seat.Proof) string {
	switch p.By {
	case seat.ByPrices:
		return "Proved the best: at the prices of the seats nobody would rather have others."
	case seat.BySearch:
		return "Proved the best: by prices, and a search of what they leave open."
	}
	return fmt.Sprintf("Not proved: stopped early; no seating has more than %.3f nights above these.", p.Gap())
}

// other tells the second best seating and what a wish costs.
func (p *page) other(s seat.Answer, night seat.Seating) {
	if s.Next != nil {
		p.lines(fmt.Sprintf("The next best seating gives up %s of a night: %s.", small(night.Proof.Value-s.Next.Proof.Value), changed(seat.Changes(night, *s.Next))))
	}
	if s.Price != nil {
		p.lines(WishPrice(*s.Price)...)
	}
}

// small prints a part of a night.
func small(x float64) string {
	if x < 0.0005 {
		return "less than a thousandth"
	}
	return fmt.Sprintf("%.3f", x)
}

// WishPrice says what a wish costs, and whom.
func WishPrice(p seat.Price) []string {
	if len(p.Change) == 0 {
		return []string{"The wish costs nothing: it is so already."}
	}
	out := []string{fmt.Sprintf("The wish, %s, costs all together %s of a night.", wishWords(p.Wish), small(p.Nights))}
	for _, c := range p.Change {
		verb := "gains"
		if c.By < 0 {
			verb = "loses"
		}
		out = append(out, fmt.Sprintf("%s %s %.3f of worth: %s.", c.Who, verb, max(c.By, -c.By), moved(c)))
	}
	return out
}

// wishWords tells a wish, periods of one person at one hole together.
func wishWords(wish []seat.Seat) string {
	var parts []string
	for i := 0; i < len(wish); {
		w, periods := wish[i], []string{}
		for ; i < len(wish) && wish[i].Who == w.Who && wish[i].Hole == w.Hole; i++ {
			periods = append(periods, fmt.Sprint(wish[i].Period))
		}
		word := "period"
		if len(periods) > 1 {
			word = "periods"
		}
		parts = append(parts, fmt.Sprintf("%s at %s in %s %s", w.Who, w.Hole, word, say.Names(periods)))
	}
	return say.Names(parts)
}

func changed(all []seat.Change) string {
	var parts []string
	for _, c := range all {
		parts = append(parts, c.Who+" "+moved(c))
	}
	return strings.Join(parts, "; ")
}

func moved(c seat.Change) string { return holeRow(c.From) + " becomes " + holeRow(c.To) }

func holeRow(holes []string) string {
	out := slices.Clone(holes)
	for i, h := range out {
		if h == "" {
			out[i] = "-"
		}
	}
	if len(slices.Compact(slices.Clone(out))) == 1 {
		return out[0]
	}
	return strings.Join(out, " ")
}

// Accounts are the columns of a season's ledger.
func Accounts(l *seat.Ledger) table.Fields[seat.Account] {
	nights := func(x float64) string { return fmt.Sprintf("%.2f", x) }
	return table.Fields[seat.Account]{
		left("who", "who", func(a seat.Account) string { return a.Who }),
		numbered("games", "games", func(a seat.Account) string { return fmt.Sprint(a.Games) }),
		numbered("seated", "seated", func(a seat.Account) string { return fmt.Sprint(a.Seated) }),
		explained(numbered("nights asked", "asked_nights", func(a seat.Account) string { return nights(a.Asked) }), "requests in time, and what late ones were given"),
		explained(numbered("nights had", "had_nights", func(a seat.Account) string { return nights(a.Had) }), "a night with the best hole that they could have had counts 1"),
		shareIfTold("share", "share", seat.Account.Share),
		numbered("behind", "owed_nights", func(a seat.Account) string { return fmt.Sprintf("%+.2f", l.Owed(a.Who)) }),
		numbered("late", "late", func(a seat.Account) string { return fmt.Sprint(a.Late) }),
		numbered("missed", "missed", func(a seat.Account) string { return fmt.Sprint(a.Missed) }),
	}
}

// Spreads are the columns of how even seasons were by rule.
func Spreads() table.Fields[seat.Season] {
	of := func(head string, get func(seat.Spread) float64) table.Field[seat.Season] {
		return numbered(head, head, func(s seat.Season) string { return fmt.Sprintf("%.1f %%", 100*get(s.Spread())) })
	}
	return table.Fields[seat.Season]{
		left("rule", "rule", func(s seat.Season) string { return string(s.Rule) }),
		of("least", func(x seat.Spread) float64 { return x.Least }),
		left("who", "worst_off", func(s seat.Season) string { return s.Spread().WorstOff }),
		of("mean", func(x seat.Spread) float64 { return x.Mean }),
		of("most", func(x seat.Spread) float64 { return x.Most }),
		left("who", "best_off", func(s seat.Season) string { return s.Spread().BestOff }),
		of("deviation", func(x seat.Spread) float64 { return x.Deviation }),
	}
}

// season tells a season's ledger, and how even it was beside other rules.
func (p *page) season(s seat.Answer) {
	l := &s.Season.Ledger
	p.say("%s by the rule: the best night for all, each counting double for every night that they are behind\n\n%s\n",
		say.Count(len(s.Season.Nights), "game"), Accounts(l).Of("", l.Accounts(), unit.Metric).Text())
	p.say("share of what each could have had, by rule\n\n%s\n", Spreads().Of("", append([]seat.Season{s.Season}, s.Compare...), unit.Metric).Text())
	if s.Ceiling >= 0 {
		p.lines(fmt.Sprintf("No rule, had it known every game from the start, could have given the worst off more than %.1f %%; this one gave %.1f %%.", 100*s.Ceiling, 100*s.Season.Spread().Least))
	}
	p.lines(Proofs(s.Season))
}

// Proofs says how many nights of a season were proved, and how.
func Proofs(s seat.Season) string {
	return fmt.Sprintf("Proved the best: %d nights by prices, %d by prices and a search; not proved: %d.", s.Proved[seat.ByPrices], s.Proved[seat.BySearch], s.Proved[seat.NotProved])
}
