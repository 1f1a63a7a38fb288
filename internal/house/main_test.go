// Package house holds no code: its tests hold the project to its own rules, from
// the arrows between packages to the paths that documents name.
package house

import (
	"fmt"
	"os"
	"testing"
)

// TestMain runs the tests in the project's root, where documents name paths from.
func TestMain(m *testing.M) {
	if err := os.Chdir("../.."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(m.Run())
}
