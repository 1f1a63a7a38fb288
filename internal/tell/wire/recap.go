package wire

import (
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// Recap encodes what the frames of a game said. Names are the contract's; lux is that of
// all frames.
func Recap(a recap.Answer) Object {
	return Object{
		"frames", len(a.Frames), "game", a.Evening.Game,
		"certain", a.Count(recap.Certain), "likely", a.Count(recap.Likely), "ambiguous", a.Count(recap.Ambiguous), "unmatched", a.Count(recap.Unmatched),
		"lux", spreadOf(a.Lux()),
		"holes", Each(a.Uses, use),
		"light", Each(a.Light, func(s recap.Seen) Object {
			return Object{"end", s.End, "zone", s.Zone, "stage", s.Stage, "low_lx", s.Lux.Low, "median_lx", s.Lux.Median, "high_lx", s.Lux.High, "n", s.Lux.N, "survey_lx", s.Survey}
		}),
		"iso", Each(a.ISOs, func(s recap.AtISO) Object {
			return Object{"iso", s.ISO, "pictures", s.Bursts, "kept", s.Kept, "noise", s.Noise}
		}),
		"plan", Each(a.Learnt.Facts, func(f recap.Fact) Object {
			return Object{"hole", f.Hole, "pictures", f.Bursts, "kept", f.Kept, "expected_share", f.Expected, "seen_share", f.Seen}
		}),
		"learnt", Each(phaseList(), func(p play.Phase) Object {
			l := a.Learnt
			return Object{"phase", p.String(), "share", l.Assumptions.Share[p], "share_before", l.Before.Share[p], "weight", l.Assumptions.Weight[p], "weight_before", l.Before.Weight[p]}
		}),
		"clocks", Each(recap.Bodies(a), func(b recap.Body) Object {
			return Object{"body", b.Name, "ahead_s", b.Clock.Ahead.Seconds(), "spread_s", b.Clock.Spread.Seconds(), "marks", b.Clock.Marks, "frames", b.Frames,
				"drift_s_per_hour", b.Clock.Drift, "drift_spread_s_per_hour", b.Clock.DriftSpread}
		}),
		"doubts", Each(recap.Doubts(a.Frames), func(d recap.Reason) Object {
			return Object{"sure", d.Sure, "why", d.Why, "frames", d.Frames, "first", d.First}
		}),
		"unread", Each(a.Unread, func(u recap.Unread) Object { return Object{"cause", u.Cause, "files", u.Files, "first", u.First} }),
		"pictures", Each(a.Frames, func(m recap.Matched) Object {
			return Object{"file", m.File, "at", m.At.Format("2006-01-02T15:04:05"), "stage", m.Stage, "hole", m.Hole, "who", m.Who, "sure", m.Sure, "why", m.Why,
				"may", some(m.May), "zone", m.Zone, "pass", passOf(m), "focal_mm", m.Focal, "shutter_s", m.Shutter, "stop", m.Stop, "iso", m.ISO, "rating", m.Rating}
		}),
	}
}

// passOf is the share of the light that a frame's hole lets through, where it is known.
func passOf(m recap.Matched) unit.Maybe[float64] {
	if m.Pass <= 0 {
		return unit.Maybe[float64]{}
	}
	return unit.Known(m.Pass)
}

func phaseList() []play.Phase { p := play.Phases(); return p[:] }

// spreadOf writes low, median, high and n; null where there is nothing.
func spreadOf(s recap.Spread) Object {
	if s.N == 0 {
		return Object{"median", nil, "low", nil, "high", nil, "n", 0}
	}
	return Object{"median", s.Median, "low", s.Low, "high", s.High, "n", s.N}
}

func use(u recap.Use) Object {
	o := Object{"hole", u.Hole, "stage", u.Stage, "frames", u.Frames, "pictures", u.Bursts, "kept", u.Kept, "hours", u.Hours}
	o = append(o, rates("kept_per_hour", u.PerHour)...)
	o = append(o, rates("kept_per_open_minute", u.PerOpenMin)...)
	return append(o, "focal_mm", spreadOf(u.Focal), "shutter_s", spreadOf(u.Shutter), "stop", spreadOf(u.Stop), "iso", spreadOf(u.ISO),
		"blur_px", spreadOf(u.Blur), "blur_risk", u.AtRisk)
}

func rates(name string, m unit.Maybe[recap.Rated]) Object {
	if r, ok := m.Get(); ok {
		return Object{name, r.Rate, name + "_low", r.Low, name + "_high", r.High}
	}
	return Object{name, nil, name + "_low", nil, name + "_high", nil}
}

// RecapBest encodes the best sets of holes by what the frames say and by what was assumed
// before, to stand beside [Recap].
func RecapBest(b recap.Best, sys unit.System) Object {
	return Object{"best", Object{"learnt", ChoiceOf(b.By, sys), "before", ChoiceOf(b.Before, sys), "panes_new", some(b.Moved())}}
}
