package main

import (
	"runtime/debug"

	"github.com/spf13/cobra"
)

// commands lists every command in the order a user meets them. Each stands in
// a file of its own as func xxxCommand(a *app) *cobra.Command.
func commands(a *app) []*cobra.Command {
	return []*cobra.Command{
		rinkCommand(a),
		surveyCommand(a),
		checkCommand(a),
		fitCommand(a),
		sightCommand(a),
		lightCommand(a),
		opticsCommand(a),
		panelCommand(a),
		frameCommand(a),
		gainCommand(a),
		chooseCommand(a),
		visitCommand(a),
		puckCommand(a),
		cutCommand(a),
		bookCommand(a),
		planCommand(a),
		inspectCommand(a),
		seatCommand(a),
		coversCommand(a),
		resectCommand(a),
		recapCommand(a),
		leagueCommand(a),
		workCommand(a),
		deskCommand(a),
		peopleCommand(a),
		auditCommand(a),
		backupCommand(a),
		restoreCommand(a),
		licencesCommand(a),
		completionsCommand(a),
		manualCommand(a),
	}
}

// release is the version that people see; the build adds the revision.
const release = "0.1.0"

// builtFrom is the revision of the tree that a release is built from; the linker sets it, since a
// release is built outside of the repository.
var builtFrom string

func version() string {
	if builtFrom != "" {
		return release + "+" + builtFrom
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return release
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return release + "+" + s.Value[:12]
		}
	}
	return release
}
