package main

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

func coversCommand(a *app) *cobra.Command {
	var place storePlace
	var only, day string
	var sheet labels
	var from source
	var pucks, inspections bool
	c := &cobra.Command{
		Use:   "covers",
		Short: "Show where every cover is, what is wrong, and how often something happened",
		Long: "Reads what the desk and the phones at the glass have kept: each cover's state, how long its hole was\n" +
			"open on the day, what the phase of the day does not allow, and the incidents of all days with their\n" +
			"rate in a thousand hours open. A day lasts from 04:00 to 04:00.",
		Example: "  rinkpane covers\n  rinkpane covers --day 2026-11-28 --json\n  rinkpane covers --arena harbour-hall --csv=rates",
		Args:    noArgument,
	}
	place.flags(c)
	c.Flags().StringVar(&only, "arena", "", "only this arena, by its id on the desk (default: all that have covers)")
	c.Flags().StringVar(&day, "day", "", "the day, as 2026-11-28 (default: today)")
	sheet.out.flags(c, "labels", "write a sheet of labels with a QR code for each cover to this file (.pdf)")
	c.Flags().StringVar(&sheet.paper, "label-paper", "a4-24", "paper of the labels: a4-24, a4-14, letter-30 or letter-10")
	c.Flags().StringVar(&sheet.atDesk, "desk-address", "", "the desk's address in the codes, as https://desk.example: a phone opens the page at the glass")
	c.Flags().BoolVar(&pucks, "pucks", false, "also how many pucks to expect through each hole while it was open on the day")
	c.Flags().BoolVar(&inspections, "inspections", false, "also when each hole must be inspected next, by the rule sets in force")
	from.rulesFlag(c)
	c.RunE = func(c *cobra.Command, _ []string) error {
		if err := sheet.out.may(".pdf"); err != nil {
			return err
		}
		now, window, err := dayAsked(day, time.Now())
		if err != nil {
			return err
		}
		s, err := place.look(c.Context())
		if err != nil {
			return err
		}
		defer s.Close()
		all, err := minding(c.Context(), s, only, window, now)
		if err != nil {
			return err
		}
		if pucks || inspections {
			if err := from.outfit(a); err != nil {
				return err
			}
			if err := ofPlans(c.Context(), s, from, all, pucks, inspections); err != nil {
				return err
			}
		}
		if err := sheet.write(c.Context(), all); err != nil {
			return err
		}
		return a.print(wire.Covers(all), func() string { return coversText(all, now.Location()) })
	}
	return c
}

// dayAsked returns a day's window, and up to when it is told: its end, or now.
func dayAsked(day string, now time.Time) (time.Time, custody.Window, error) {
	window := custody.DayOf(now)
	if day != "" {
		t, err := time.ParseInLocation(time.DateOnly, day, now.Location())
		if err != nil {
			return now, window, fmt.Errorf("--day %s: write a day as 2026-11-28", form.Quote(day))
		}
		window = custody.DayOf(t.Add(12 * time.Hour))
	}
	if now.After(window.To) {
		now = window.To
	}
	return now, window, nil
}

// minding reads how the covers of an arena, or of all, stand.
func minding(ctx context.Context, s *store.Store, only string, window custody.Window, now time.Time) ([]wire.Minding, error) {
	arenas, err := s.Arenas(ctx)
	if err != nil {
		return nil, err
	}
	var out []wire.Minding
	for _, id := range arenas {
		if only != "" && only != id {
			continue
		}
		h, err := custody.ReadHistory(ctx, s, id)
		if err != nil {
			return nil, err
		}
		out = append(out, wire.Minding{Arena: id, Board: custody.Fold(h, window, now), Rates: custody.RatesOf(h, custody.Window{To: now})})
	}
	if only != "" && len(out) == 0 {
		return nil, fmt.Errorf("--arena %s: nothing is kept about it; arenas with covers: %s", form.Quote(only), strings.Join(arenas, ", "))
	}
	return out, nil
}

// ofPlans tells what follows from the newest version of each arena: how many pucks came
// through its holes, and when its holes must be inspected.
func ofPlans(ctx context.Context, s *store.Store, from source, all []wire.Minding, pucks, inspections bool) error {
	on := shelf.New(s, from.Maker, time.Now)
	for i, m := range all {
		b, err := on.Open(ctx, m.Arena, 0)
		if err != nil {
			return fmt.Errorf("%s: %w", m.Arena, err)
		}
		plan, err := b.Arena.Check()
		if err != nil {
			return err
		}
		if inspections {
			h, err := custody.ReadHistory(ctx, s, m.Arena)
			if err != nil {
				return err
			}
			all[i].Due = custody.InspectionsDue(h, plan, b.Maker.Rules)
		}
		if !pucks {
			continue
		}
		guards, err := puck.Assess(ctx, plan, puck.DefaultOptions())
		if err != nil {
			return fmt.Errorf("%s: %w", m.Arena, err)
		}
		all[i].Expected = custody.Expect(m.Board.Holes, guards)
	}
	return nil
}

func coversText(all []wire.Minding, zone *time.Location) string {
	if len(all) == 0 {
		return "Nothing is kept about covers yet: label them on the desk, or open it with --demo-season.\n"
	}
	texts := make([]string, len(all))
	for i, m := range all {
		texts[i] = words.CoversText(m.Arena, m.Board, m.Rates, zone)
		if len(m.Expected) > 0 {
			texts[i] += words.ExpectedText(m.Expected)
		}
		if len(m.Due) > 0 {
			texts[i] += words.DueText(m.Due, m.Board.At.In(zone))
		}
	}
	return strings.Join(texts, "\n")
}
