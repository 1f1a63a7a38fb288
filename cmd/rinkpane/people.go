package main

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"os/user"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/tell/wire"
)

func peopleCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "people",
		Short: "Say who may sign in to a shared desk, and as what",
		Long: "Once somebody is set up, the desk asks everybody to sign in, and may open on an address that other\n" +
			"machines reach. Roles, each with all that those before it may do: viewer (look), photographer (ask\n" +
			"for seats), steward (mind covers), planner (change plans and people). Passwords are kept as Argon2id\n" +
			"hashes; they are read from the terminal or from standard input, never from the command line. Who\n" +
			"signs in, who fails to, and who lets whom in is written into a log.",
		Example: "  rinkpane people add Ada --role planner\n" +
			"  rinkpane people add Bo --role viewer < password.txt\n" +
			"  rinkpane people change Bo --role photographer\n" +
			"  rinkpane people list\n" +
			"  rinkpane people log --most 20\n" +
			"  rinkpane people remove Bo",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.AddCommand(peopleAdd(a), peopleChange(a), peopleList(a), peopleRemove(a), peopleLog(a))
	return c
}

// onRegister makes a subcommand that works on the store's people.
func onRegister(c *cobra.Command, do func(ctx context.Context, r people.Register, args []string) error) *cobra.Command {
	var place storePlace
	place.flags(c)
	c.RunE = func(c *cobra.Command, args []string) error {
		s, err := place.open(c.Context())
		if err != nil {
			return err
		}
		defer s.Close()
		return do(c.Context(), s, args)
	}
	return c
}

func peopleAdd(a *app) *cobra.Command {
	var role string
	c := &cobra.Command{
		Use: "add NAME --role ROLE", Short: "Let somebody sign in",
		Example: "  rinkpane people add Ada --role planner",
		Args:    oneName,
	}
	c.Flags().StringVar(&role, "role", "", "viewer, photographer, steward or planner")
	return onRegister(c, func(ctx context.Context, r people.Register, args []string) error {
		p := people.Person{Name: args[0], Since: time.Now()}
		var err error
		if p.Role, err = people.ParseRole(role); err != nil {
			return fmt.Errorf("--role: %w", err)
		}
		all, err := r.People(ctx)
		if err != nil {
			return err
		}
		if _, err := people.Adding(p)(all); err != nil { // before the password is asked for
			return taken(err)
		}
		if p.Password, err = newPassword(a, p.Name); err != nil {
			return err
		}
		if err := r.Alter(ctx, people.Adding(p), fromTerminal("let "+p.Name+" in as "+string(p.Role))); err != nil {
			return taken(err)
		}
		return a.print(personLine(p), func() string { return fmt.Sprintf("%s may sign in as %s.\n", p.Name, p.Role) })
	})
}

func peopleChange(a *app) *cobra.Command {
	var role string
	var password bool
	c := &cobra.Command{
		Use: "change NAME [--role ROLE] [--password]", Short: "Give somebody another role or password",
		Long:    "The person's sessions end, so that what changed counts at once.",
		Example: "  rinkpane people change Bo --role photographer\n  rinkpane people change Bo --password",
		Args:    oneName,
	}
	c.Flags().StringVar(&role, "role", "", "viewer, photographer, steward or planner")
	c.Flags().BoolVar(&password, "password", false, "ask for a new password")
	return onRegister(c, func(ctx context.Context, r people.Register, args []string) error {
		if role == "" && !password {
			return errors.New("nothing to change: give --role, --password, or both")
		}
		p, err := personOf(ctx, r, args[0])
		if err != nil {
			return err
		}
		var did []string
		if role != "" {
			if p.Role, err = people.ParseRole(role); err != nil {
				return fmt.Errorf("--role: %w", err)
			}
			did = append(did, "made "+p.Name+" "+role)
		}
		if password {
			if p.Password, err = newPassword(a, p.Name); err != nil {
				return err
			}
			did = append(did, "gave "+p.Name+" a new password")
		}
		change := people.Changing(p.Name, func(kept *people.Person) { kept.Role, kept.Password = p.Role, p.Password })
		if err := r.Alter(ctx, change, fromTerminal(strings.Join(did, ", "))); err != nil {
			return err
		}
		return a.print(personLine(p), func() string { return fmt.Sprintf("%s is %s now.\n", p.Name, p.Role) })
	})
}

func peopleList(a *app) *cobra.Command {
	c := &cobra.Command{Use: "list", Short: "Show who may sign in", Example: "  rinkpane people list", Args: cobra.NoArgs}
	return onRegister(c, func(ctx context.Context, r people.Register, _ []string) error {
		all, err := r.People(ctx)
		if err != nil {
			return err
		}
		lines := wire.Each(all, personLine)
		return a.print(wire.Object{"people", lines}, func() string {
			if len(all) == 0 {
				return "Nobody is set up: the desk asks nobody to sign in, and opens on this machine only.\n"
			}
			var b strings.Builder
			for _, p := range all {
				fmt.Fprintf(&b, "%-30s %-14s since %s\n", p.Name, p.Role, p.Since.Format(time.DateOnly))
			}
			return b.String()
		})
	})
}

func peopleRemove(a *app) *cobra.Command {
	c := &cobra.Command{
		Use: "remove NAME", Short: "Let somebody sign in no more", Example: "  rinkpane people remove Bo", Args: oneName,
	}
	return onRegister(c, func(ctx context.Context, r people.Register, args []string) error {
		p, err := personOf(ctx, r, args[0])
		if err != nil {
			return err
		}
		if err := r.Alter(ctx, people.Removing(p.Name), fromTerminal("removed "+p.Name)); err != nil {
			return err
		}
		return a.print(personLine(p), func() string { return fmt.Sprintf("%s may sign in no more.\n", p.Name) })
	})
}

func personLine(p people.Person) wire.Object { return wire.Object{"name", p.Name, "role", p.Role} }

// oneName takes one argument that is a person's name.
func oneName(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("%d names given: give one, in quotes when it has spaces", len(args))
	}
	args[0] = people.Tidy(args[0])
	return nil
}

// fromTerminal is the entry of the log for what this command does.
func fromTerminal(what string) people.Entry {
	e := people.Entry{At: time.Now(), Kind: people.Altered, Who: "terminal", What: what, From: "an unknown user"}
	if u, err := user.Current(); err == nil {
		e.From = u.Username
	}
	return e
}

// taken adds the cure to a name that is taken.
func taken(err error) error {
	if errors.Is(err, people.ErrTaken) {
		return fmt.Errorf("%w; see rinkpane people list, and use rinkpane people change for who is set up already", err)
	}
	return err
}

func personOf(ctx context.Context, r people.Register, name string) (people.Person, error) {
	p, err := r.Person(ctx, name)
	if errors.Is(err, people.ErrNone) {
		return p, fmt.Errorf("nobody of the name %s is set up; see rinkpane people list", name)
	}
	return p, err
}

// newPassword asks for a password and returns its hash.
func newPassword(a *app, name string) (string, error) {
	password, err := askPassword(a, "Password for "+name)
	if err != nil {
		return "", err
	}
	if err := people.CheckPassword(password); err != nil {
		return "", err
	}
	return people.Hash(password, rand.Reader)
}
