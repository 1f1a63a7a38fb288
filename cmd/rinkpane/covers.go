package main

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

func coversCommand(a *app) *cobra.Command {
	var place storePlace
	var only, day string
	var sheet labels
	var pucks bool
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
	c.RunE = func(c *cobra.Command, _ []string) error {
		if err := sheet.out.may(".pdf"); err != nil {
			return err
		}
		now, window, err := dayAsked(day, time.Now())
		if err != nil {
			return err
		}
		s, err := place.open(c.Context())
		if err != nil {
			return err
		}
		defer s.Close()
		all, err := minding(c.Context(), s, only, window, now)
		if err != nil {
			return err
		}
		if pucks {
			if err := expectPucks(c.Context(), s, all); err != nil {
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

// expectPucks asks the guard of each arena's newest version what came through its holes.
func expectPucks(ctx context.Context, s *store.Store, all []wire.Minding) error {
	for i, m := range all {
		v, err := s.Version(ctx, m.Arena, 0)
		if err != nil {
			return fmt.Errorf("%s: %w", m.Arena, err)
		}
		doc, err := arena.Read(m.Arena+".yaml", strings.NewReader(v.Text))
		if err != nil {
			return err
		}
		plan, err := doc.Check()
		if err != nil {
			return err
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
	}
	return strings.Join(texts, "\n")
}
