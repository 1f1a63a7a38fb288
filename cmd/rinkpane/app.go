package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"unicode"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
)

// Exit codes: the one table (contract).
const (
	exitDone = 0 // done; for check: every rule passes
	exitNo   = 1 // done, and the answer is no
	exitBad  = 2 // bad input or usage
)

// errStopped ends a command that the user stopped.
var errStopped = errors.New("stopped before the answer was there")

// errAnswerNo ends a command whose output is complete and whose answer is no.
var errAnswerNo = errors.New("the answer is no")

// app is what every command shares: its streams and the common flags.
// Output is held back until the command has succeeded, so that a failed
// command leaves standard output empty.
type app struct {
	in     io.Reader
	out    *bytes.Buffer   // reaches standard output when the command is done
	stdout io.Writer       // for commands that must print at once (desk)
	err    io.Writer       // progress, warnings, people's text under --json
	stop   <-chan struct{} // closed when the user stops the program
	json   bool
	csv    string // name of the table asked for, "" for none, everyTable for all
	units  string
}

// run is the program's life in one screen.
func run(args []string, in io.Reader, stdout, stderr io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends at once what does not stop cleanly
	return answer(ctx, args, in, stdout, stderr)
}

// answer runs the command that args name until it is done or ctx ends.
func answer(ctx context.Context, args []string, in io.Reader, stdout, stderr io.Writer) int {
	a := &app{in: in, out: new(bytes.Buffer), stdout: stdout, err: stderr, stop: ctx.Done()}
	root := rootCommand(a)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(a.out)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	if errors.Is(err, context.Canceled) && ctx.Err() != nil {
		err = errStopped
	}
	if err != nil && !errors.Is(err, errAnswerNo) {
		fmt.Fprintln(stderr, "rinkpane: "+printable(err.Error()))
		return exitBad
	}
	if _, werr := stdout.Write(a.out.Bytes()); werr != nil {
		fmt.Fprintln(stderr, "rinkpane: standard output: "+printable(werr.Error()))
		return exitBad
	}
	if err != nil {
		return exitNo
	}
	return exitDone
}

func rootCommand(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:           "rinkpane",
		Short:         "Plan, prove, cut, share and mind the photo holes of an ice rink",
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          knownCommand,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	cobra.MousetrapHelpText = ""        // who presses the program in a window gets the desk
	root.SuggestionsMinimumDistance = 2 // letters amiss in a command's name
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(flagProblem)
	root.PersistentFlags().BoolVar(&a.json, "json", false, "print one JSON value and nothing else")
	root.PersistentFlags().StringVar(&a.csv, "csv", "", "print the JSON answer's lists as CSV, parted by blank lines; --csv=NAME prints one")
	root.PersistentFlags().Lookup("csv").NoOptDefVal = everyTable
	root.PersistentFlags().StringVar(&a.units, "units", "", "print in metric or imperial units (default: the document's own)")
	root.AddCommand(commands(a)...)
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages ", ".FlagUsagesWrapped 100 "))
	root.InitDefaultHelpCmd()
	for _, c := range root.Commands() {
		if c.Name() == "help" {
			c.Args = helpTopic
		}
	}
	return root
}

// system returns the units to print in: the --units flag, else the document's own.
func (a *app) system(own unit.System) (unit.System, error) {
	if a.units == "" {
		return own, nil
	}
	s, err := unit.ParseSystem(a.units)
	if err != nil {
		return own, fmt.Errorf("--units: %w", err)
	}
	return s, nil
}

// verdict prints an answer as [app.print] does; unless it is yes, the command ends
// with the exit code for no.
func (a *app) verdict(yes bool, v any, text func() string) error {
	if err := a.print(v, text); err != nil || yes {
		return err
	}
	return errAnswerNo
}

// print writes v as JSON under --json, its tables under --csv, else the text.
func (a *app) print(v any, text func() string) error {
	switch {
	case a.json && a.csv != "":
		return errors.New("--json and --csv together: one answer has one form")
	case a.csv != "":
		return a.printCSV(v)
	case !a.json:
		a.out.WriteString(text())
		return nil
	}
	data, err := wire.JSON(v)
	a.out.Write(data)
	return err
}

// printable drops control characters, which could drive a terminal.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' {
			return r
		}
		if unicode.IsControl(r) || (unicode.Is(unicode.Cf, r) && r != '\u200d') {
			return -1
		}
		return r
	}, s)
}
