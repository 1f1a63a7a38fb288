package sheet_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// tool runs a program of the machine on a file with some content, and returns
// what it printed. The file's path takes the place of "FILE" in the arguments.
func tool(t *testing.T, deb, file string, content []byte, name string, args ...string) string {
	t.Helper()
	path := written(t, file, content)
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	return run(t, deb, name, args...)
}

// written writes a file into a folder of its own and returns its path.
func written(t *testing.T, file string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), file)
	if err := os.WriteFile(path, content, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// run runs a program of the machine, of a Debian package, and returns what it printed.
func run(t *testing.T, deb, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		if exit, ok := err.(*exec.ExitError); ok {
			t.Fatalf("%s: %v\n%s%s", name, err, exit.Stderr, out)
		}
		t.Fatalf("%s: %v (Debian package %s)", name, err, deb)
	}
	return string(out)
}
