package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// act is one line of the audit.
type act struct {
	at         time.Time
	who, arena string
	kind, what string
	event      custody.Event // of a cover or hole; else empty
}

func auditCommand(a *app) *cobra.Command {
	var place storePlace
	var only, who string
	var most int
	c := &cobra.Command{
		Use:   "audit",
		Short: "Tell who did what: versions, covers, inspections, incidents, people",
		Long: "The newest first. Every event is told, also one that was corrected since; a correction names what it\n" +
			"corrects. Times are the desk's: a phone's clock that was off is corrected, and by how much is told.",
		Example: "  rinkpane audit --most 20\n  rinkpane audit --arena harbour-hall --who 'Ines Marlow'\n  rinkpane audit --csv > audit.csv",
		Args:    noArgument,
	}
	place.flags(c)
	c.Flags().StringVar(&only, "arena", "", "only this arena, by its id on the desk")
	c.Flags().StringVar(&who, "who", "", "only what this person did")
	c.Flags().IntVar(&most, "most", 100, "how many entries to tell; 0 for all")
	c.RunE = func(c *cobra.Command, _ []string) error {
		if most < 0 {
			return errors.New("--most: tell 1 entry or more, or 0 for all")
		}
		s, err := place.look(c.Context())
		if err != nil {
			return err
		}
		defer s.Close()
		all, err := acts(c.Context(), s)
		if err != nil {
			return err
		}
		all = slices.DeleteFunc(all, func(x act) bool { return only != "" && x.arena != only || who != "" && x.who != who })
		slices.SortStableFunc(all, func(x, y act) int { return y.at.Compare(x.at) })
		if most > 0 && len(all) > most {
			all = all[:most]
		}
		return a.print(wire.Object{"entries", wire.Each(all, actLine)}, func() string { return actsText(all) })
	}
	return c
}

// acts gathers all that was done, by anybody.
func acts(ctx context.Context, s *store.Store) ([]act, error) {
	var out []act
	for _, kind := range []revision.Kind{revision.Arena, revision.Kit, revision.RuleSet, revision.Games, revision.Frames} {
		docs, err := s.Documents(ctx, kind, true)
		if err != nil {
			return nil, err
		}
		for _, d := range docs {
			versions, err := s.History(ctx, d.ID, d.Head)
			if err != nil {
				return nil, err
			}
			for _, v := range versions {
				out = append(out, act{at: v.At, who: v.Who, arena: d.ID, kind: "version", what: fmt.Sprintf("version %d: %s", v.Number, v.What)})
			}
		}
	}
	arenas, err := s.Arenas(ctx)
	if err != nil {
		return nil, err
	}
	for _, id := range arenas {
		events, err := custody.ReadEvents(ctx, s, id, 0)
		if err != nil {
			return nil, err
		}
		for _, e := range events {
			kind, _ := custody.Encode(e.Fact)
			what := words.Happened(e.Fact)
			if e.Corrects != "" {
				what += ", correcting event " + string(e.Corrects)
			}
			out = append(out, act{e.At(), e.Who, id, kind, what, e})
		}
	}
	log, err := s.Log(ctx, 3*people.LogLength)
	for _, e := range log {
		out = append(out, act{at: e.At, who: e.Who, kind: string(e.Kind), what: e.What + " (" + e.From + ")"})
	}
	return out, err
}

func actLine(x act) wire.Object {
	o := wire.Object{"at", x.at.UTC(), "who", x.who, "arena", x.arena, "kind", x.kind, "what", x.what}
	if x.event.ID == "" {
		return append(o, "event", nil, "device", nil, "corrects", nil, "clock_ahead_s", nil, "kept", nil)
	}
	return append(o, "event", x.event.ID, "device", x.event.ID.Device(), "corrects", x.event.Corrects,
		"clock_ahead_s", x.event.Ahead.Seconds(), "kept", x.event.Kept)
}

func actsText(all []act) string {
	if len(all) == 0 {
		return "Nothing was done that this asks for.\n"
	}
	var b strings.Builder
	for _, x := range all {
		where := ""
		if x.arena != "" {
			where = x.arena + ": "
		}
		fmt.Fprintf(&b, "%s  %s: %s%s\n", x.at.Local().Format("2006-01-02 15:04:05"), x.who, where, x.what)
	}
	return b.String()
}
