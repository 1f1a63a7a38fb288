package words

import (
	"fmt"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/table"
)

// RecapText tells what the frames of a game said.
func RecapText(a recap.Answer, sys unit.System) string {
	p := page{sys: sys}
	p.lines(RecapCount(a)...)
	for _, t := range RecapTables(a, sys) {
		if len(t.Rows) > 0 {
			p.say("\n%s\n%s", t.Title, t.Shown().Text())
		}
	}
	p.say("\n")
	p.lines(RecapNotes(a)...)
	return p.String()
}

// RecapHead says in a line how many frames there are and how well they are matched.
func RecapHead(a recap.Answer) string {
	title := ""
	if a.Evening.Title != "" {
		title = a.Evening.Title + ": "
	}
	return fmt.Sprintf("%s%s; of %d the hole is certain, of %d likely, of %d ambiguous, of %d not known.", title, say.Count(len(a.Frames), "frame"),
		a.Count(recap.Certain), a.Count(recap.Likely), a.Count(recap.Ambiguous), a.Count(recap.Unmatched))
}

// RecapCount is RecapHead with the bodies' clocks, what was not read and what is doubtful.
func RecapCount(a recap.Answer) []string {
	out := []string{RecapHead(a)}
	for _, b := range recap.Bodies(a) {
		said := ClockOf(b.Clock)
		if b.Clock.Marks == 0 {
			said += "; name a frame that shows the scoreboard with --clock"
		}
		out = append(out, fmt.Sprintf("Clock of %s: %s.", b.Name, said))
	}
	for _, u := range a.Unread {
		out = append(out, fmt.Sprintf("Not read: %s (%s), the first %s.", say.Count(u.Files, "file"), UnreadCause(u.Cause), u.First))
	}
	for _, d := range recap.Doubts(a.Frames) {
		out = append(out, fmt.Sprintf("%s%s: %s, as %s: %s.", strings.ToUpper(string(d.Sure[:1])), d.Sure[1:], say.Count(d.Frames, "frame"), d.First, d.Why))
	}
	return out
}

// ClockOf says how a body's clock stands against the rink's.
func ClockOf(c recap.Clock) string {
	switch {
	case c.Marks == 0:
		return "not checked"
	case c.Marks == 1:
		return fmt.Sprintf("%s against the rink's, within %.0f s", ahead(c.Ahead), 2*c.Spread.Seconds())
	}
	gains := fmt.Sprintf("gaining %.1f", c.Drift)
	if c.Drift < 0 {
		gains = fmt.Sprintf("losing %.1f", -c.Drift)
	}
	return fmt.Sprintf("%s against the rink's at %s, within %.0f s, %s s an hour, within %.1f (%d frames)", ahead(c.Ahead), c.At.Format("15:04"), 2*c.Spread.Seconds(), gains, 2*c.DriftSpread, c.Marks)
}

func ahead(d time.Duration) string {
	if d < 0 {
		return (-d).Round(time.Second).String() + " behind"
	}
	return d.Round(time.Second).String() + " ahead"
}

// Reasons are the columns of how frames are matched, and why.
var Reasons = table.Fields[recap.Reason]{
	left("match", "sure", func(r recap.Reason) string { return string(r.Sure) }),
	left("why", "why", func(r recap.Reason) string { return r.Why }),
	numbered("frames", "frames", func(r recap.Reason) string { return fmt.Sprint(r.Frames) }),
	left("first", "first", func(r recap.Reason) string { return r.First }),
}

// UnreadCause says in words why files are no frames.
func UnreadCause(cause string) string {
	if words, ok := map[string]string{
		"no-picture": "no picture of a kind that is read", "raw-kind": "a raw kind that is not read: give its sidecar or a JPEG of its name",
		"lone-sidecar": "a sidecar without its picture", "empty": "empty", "broken": "cut off or broken", "too-much": "more data than a picture has",
		"no-time": "does not say when it was taken", "unreadable": "the card or disk gave an error", "link-lost": "a link in a circle, or to nothing",
		"link-to-folder": "a link to a folder, not followed", "no-regular-file": "no regular file",
	}[cause]; ok {
		return words
	}
	return cause
}

// RecapTables are the tables of what the frames of a game said, those without rows too.
func RecapTables(a recap.Answer, sys unit.System) []table.Table {
	var day, parts []recap.Use
	opened := false // it is known how long some hole was
	for _, u := range a.Uses {
		opened = opened || !u.PerOpenMin.IsZero()
		if u.Stage == "" {
			day = append(day, u)
		} else {
			parts = append(parts, u)
		}
	}
	return []table.Table{
		recapUses(false, opened).Of("What each hole gave", day, sys),
		recapUses(true, opened).Of("By part of the game", parts, sys),
		recapLight().Of("Light by exposures", a.Light, sys),
		recapISO().Of("Keepers by ISO", a.ISOs, sys),
		recapFacts().Of("Plan and fact", a.Learnt.Facts, sys),
		recapLearnt(a.Learnt).Of("Learnt about moments", phases(a.Learnt), sys),
	}
}

func recapUses(stage, opened bool) table.Fields[recap.Use] {
	mark := func(v float64, of func(float64) optics.Mark) string {
		if v == 0 {
			return "-"
		}
		return of(v).Text
	}
	out := table.Fields[recap.Use]{
		left("hole", "hole", func(u recap.Use) string {
			if u.Hole == "" {
				return "not known"
			}
			return u.Hole
		}),
		left("part", "stage", func(u recap.Use) string { return u.Stage }),
		numbered("frames", "frames", func(u recap.Use) string { return fmt.Sprint(u.Frames) }),
		numbered("pictures", "pictures", func(u recap.Use) string { return fmt.Sprint(u.Bursts) }),
		numbered("kept", "kept", func(u recap.Use) string { return fmt.Sprint(u.Kept) }),
		rated("kept/h", "kept_per_hour", "%.1f (%.1f-%.1f)", func(u recap.Use) unit.Maybe[recap.Rated] { return u.PerHour }),
		rated("kept/min open", "kept_per_open_minute", "%.2f (%.2f-%.2f)", func(u recap.Use) unit.Maybe[recap.Rated] { return u.PerOpenMin }),
		numbered("mm", "focal_mm", func(u recap.Use) string { return spreadText(u.Focal, "%.0f") }),
		numbered("shutter", "shutter", func(u recap.Use) string {
			return mark(u.Shutter.Median, func(v float64) optics.Mark { return optics.NearestShutter(unit.Shutter(v)) })
		}),
		numbered("stop", "stop", func(u recap.Use) string {
			return mark(u.Stop.Median, func(v float64) optics.Mark { return optics.NearestStop(unit.Stop(v)) })
		}),
		numbered("ISO", "iso", func(u recap.Use) string { return spreadText(u.ISO, "%.0f") }),
		numbered("blur", "blur_px", func(u recap.Use) string {
			return spreadText(recap.Spread{Median: u.Blur.Median, N: u.Blur.N}, "%.1f px")
		}),
		share("at risk", "blur_risk", func(u recap.Use) float64 { return u.AtRisk }),
	}
	if stage {
		return out.Pick("hole", "stage", "frames", "pictures", "kept", "kept_per_hour", "shutter", "stop", "iso")
	}
	if !opened {
		return out.Pick("hole", "frames", "pictures", "kept", "kept_per_hour", "focal_mm", "shutter", "stop", "iso", "blur_px", "blur_risk")
	}
	return out.Pick("hole", "frames", "pictures", "kept", "kept_per_hour", "kept_per_open_minute", "focal_mm", "shutter", "stop", "iso", "blur_px", "blur_risk")
}

// rated is a column of rates with their intervals.
func rated(head, name, form string, of func(recap.Use) unit.Maybe[recap.Rated]) table.Field[recap.Use] {
	return numbered(head, name, func(u recap.Use) string {
		r, ok := of(u).Get()
		if !ok {
			return "-"
		}
		return fmt.Sprintf(form, r.Rate, r.Low, r.High)
	})
}

// spreadText prints a median, and where most lie when that differs.
func spreadText(s recap.Spread, form string) string {
	if s.N == 0 {
		return "-"
	}
	mid := fmt.Sprintf(form, s.Median)
	if s.Low == s.High || s.High == 0 {
		return mid
	}
	return fmt.Sprintf(form+"-"+form, s.Low, s.High)
}

func recapLight() table.Fields[recap.Seen] {
	lux := func(head, name string, of func(recap.Seen) float64) table.Field[recap.Seen] {
		return inUnits(head, name, true, func(s recap.Seen, sys unit.System) table.Cell {
			return table.Number(unit.Illuminance(of(s)).Format(sys), of(s))
		})
	}
	return table.Fields[recap.Seen]{
		left("end", "end", func(s recap.Seen) string {
			if s.End == "" && s.Zone == "" {
				return "all frames"
			}
			if s.End == "" {
				return "-"
			}
			return s.End
		}),
		left("zone", "zone", func(s recap.Seen) string { return s.Zone }),
		left("part", "stage", func(s recap.Seen) string { return s.Stage }),
		lux("light", "median_lx", func(s recap.Seen) float64 { return s.Lux.Median }),
		lux("from", "low_lx", func(s recap.Seen) float64 { return s.Lux.Low }),
		lux("to", "high_lx", func(s recap.Seen) float64 { return s.Lux.High }),
		numbered("frames", "n", func(s recap.Seen) string { return fmt.Sprint(s.Lux.N) }),
		inUnits("survey", "survey_lx", true, func(s recap.Seen, sys unit.System) table.Cell {
			v, ok := s.Survey.Get()
			if !ok {
				return table.None()
			}
			return table.Number(v.Format(sys), v.Lux())
		}),
	}
}

func recapISO() table.Fields[recap.AtISO] {
	return table.Fields[recap.AtISO]{
		numbered("about ISO", "iso", func(s recap.AtISO) string { return fmt.Sprintf("%.0f", s.ISO) }),
		numbered("pictures", "pictures", func(s recap.AtISO) string { return fmt.Sprint(s.Bursts) }),
		numbered("kept", "kept", func(s recap.AtISO) string { return fmt.Sprint(s.Kept) }),
		share("of them", "kept_share", func(s recap.AtISO) float64 { return float64(s.Kept) / float64(s.Bursts) }),
		numbered("noise of ISO 100's", "noise", func(s recap.AtISO) string { return fmt.Sprintf("%.1f times", s.Noise) }),
	}
}

func recapFacts() table.Fields[recap.Fact] {
	return table.Fields[recap.Fact]{
		left("hole", "hole", func(f recap.Fact) string { return f.Hole }),
		numbered("pictures", "pictures", func(f recap.Fact) string { return fmt.Sprint(f.Bursts) }),
		numbered("kept", "kept", func(f recap.Fact) string { return fmt.Sprint(f.Kept) }),
		share("planned", "expected_share", func(f recap.Fact) float64 { return f.Expected }),
		share("fact", "seen_share", func(f recap.Fact) float64 { return f.Seen }),
	}
}

// phases are those about which something was learnt.
func phases(l recap.Learnt) []play.Phase {
	if l.Bursts == 0 {
		return nil
	}
	p := play.Phases()
	return p[:]
}

func recapLearnt(l recap.Learnt) table.Fields[play.Phase] {
	number := func(head, name string, of func(play.Phase) float64) table.Field[play.Phase] {
		return numbered(head, name, func(p play.Phase) string { return fmt.Sprintf("%.3g", of(p)) })
	}
	return table.Fields[play.Phase]{
		left("moment", "phase", func(p play.Phase) string { return p.String() }),
		number("share was", "share_before", func(p play.Phase) float64 { return l.Before.Share[p] }),
		number("is", "share", func(p play.Phase) float64 { return l.Assumptions.Share[p] }),
		number("weight was", "weight_before", func(p play.Phase) float64 { return l.Before.Weight[p] }),
		number("is", "weight", func(p play.Phase) float64 { return l.Assumptions.Weight[p] }),
	}
}

// RecapNotes explain the tables.
func RecapNotes(a recap.Answer) []string {
	out := []string{
		"A picture is a burst of one body; kept, one with enough stars. Rates have their exact 95 % interval. Ranges hold 80 of 100 frames.",
		"Blur: of the moments that a hole has, as fast as the model's players, the camera held still; at risk, the share that likely smears more than a five-hundredth of the picture's height. Where the hole is not known: a skater at 5 m/s straight across.",
		"Light: what exposures were made for, E = 250 N²/(t S), over the share that the hole lets through where the lens was likely turned; taste, flash and backlight are in it. Zones are the likeliest by hole and focal length.",
	}
	if a.Learnt.Bursts > 0 {
		out = append(out, "Learnt: what was assumed before weighs as much as 3000 pictures.")
	}
	return out
}

// Kept says how many of a hole's pictures of periods were kept.
func Kept(u recap.Use) string { return fmt.Sprintf("%d of %d kept", u.InPlay.Kept, u.InPlay.Bursts) }
