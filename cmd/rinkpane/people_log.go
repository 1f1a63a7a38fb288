package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/people"
)

type entryLine struct {
	At   time.Time   `json:"at"`
	Kind people.Kind `json:"kind"`
	Who  string      `json:"who"`
	What string      `json:"what"`
	From string      `json:"from"`
}

func peopleLog(a *app) *cobra.Command {
	var most int
	c := &cobra.Command{
		Use: "log", Short: "Show who signed in, who failed to, and who let whom in",
		Long:    fmt.Sprintf("The newest first. Of sign-ins, of failures and of changes the last %d each are kept.", people.LogLength),
		Example: "  rinkpane people log --most 20", Args: noArgument,
	}
	c.Flags().IntVar(&most, "most", 100, "how many entries to show")
	return onRegister(c, func(ctx context.Context, r people.Register, _ []string) error {
		if most < 1 {
			return errors.New("--most: show 1 entry or more")
		}
		log, err := r.Log(ctx, most)
		if err != nil {
			return err
		}
		lines := make([]entryLine, 0, len(log))
		for _, e := range log {
			lines = append(lines, entryLine(e))
		}
		return a.print(map[string]any{"entries": lines}, func(w io.Writer) {
			if len(lines) == 0 {
				fmt.Fprintln(w, "Nobody has signed in, and nobody was let in.")
			}
			for _, l := range lines {
				fmt.Fprintf(w, "%s  %-8s %s: %s (%s)\n", l.At.Local().Format("2006-01-02 15:04:05"), l.Kind, l.Who, l.What, l.From)
			}
		})
	})
}
