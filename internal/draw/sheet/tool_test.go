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
	path := filepath.Join(t.TempDir(), file)
	if err := os.WriteFile(path, content, 0o644); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		if exit, ok := err.(*exec.ExitError); ok {
			t.Fatalf("%s: %v\n%s%s", name, err, exit.Stderr, out)
		}
		t.Fatalf("%s: %v (Debian package %s)", name, err, deb)
	}
	return string(out)
}
