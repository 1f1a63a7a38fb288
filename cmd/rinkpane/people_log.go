package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/tell/wire"
)

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
		lines := wire.Each(log, func(e people.Entry) wire.Object {
			return wire.Object{"at", e.At, "kind", e.Kind, "who", e.Who, "what", e.What, "from", e.From}
		})
		return a.print(wire.Object{"entries", lines}, func() string {
			if len(log) == 0 {
				return "Nobody has signed in, and nobody was let in.\n"
			}
			var b strings.Builder
			for _, e := range log {
				fmt.Fprintf(&b, "%s  %-8s %s: %s (%s)\n", e.At.Local().Format("2006-01-02 15:04:05"), e.Kind, e.Who, e.What, e.From)
			}
			return b.String()
		})
	})
}
