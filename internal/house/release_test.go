package house

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// sh runs a command in a folder and returns what it printed.
func sh(t *testing.T, dir, command string, env ...string) string {
	t.Helper()
	c := exec.Command("sh", "-euc", command)
	c.Dir, c.Env = dir, append(os.Environ(), env...)
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", command, err, out)
	}
	return string(out)
}

// TestDebianPackage builds the package twice, unpacks it, and runs its program where
// nothing else is: an empty root, as nobody.
func TestDebianPackage(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a package; make test does, make quick does not")
	}
	at, err := filepath.Abs(".")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	bin := filepath.Join(dir, "rinkpane")
	sh(t, at, "go build -o "+bin+" ./cmd/rinkpane", "CGO_ENABLED=0")
	for _, name := range []string{"one", "two"} {
		if err := os.Mkdir(filepath.Join(dir, name), 0o755); err != nil {
			t.Fatal(err)
		}
		sh(t, at, "scripts/package-debian "+bin+" amd64 "+bin+" 0.1.0 "+filepath.Join(dir, name), "SOURCE_DATE_EPOCH=1700000000", "DEB_PACKING=-Zgzip -z1")
	}
	sh(t, dir, "cmp one/*.deb two/*.deb && dpkg-deb -x one/*.deb root && mkdir root/data && chmod 777 root/data")
	files := sh(t, dir, "cd root && find . -type f")
	for _, want := range []string{
		"./usr/bin/rinkpane", "./usr/share/man/man1/rinkpane.1.gz", "./usr/share/man/man1/rinkpane-desk.1.gz", "./usr/share/doc/rinkpane/copyright",
		"./usr/lib/systemd/system/rinkpane.service", "./usr/share/bash-completion/completions/rinkpane", "./usr/share/applications/rinkpane.desktop",
	} {
		if !strings.Contains(files, want+"\n") {
			t.Errorf("the package has no %s", want)
		}
	}
	if os.Getuid() != 0 {
		return // only root may change the root
	}
	alone := "chroot --userspec=65534:65534 root /usr/bin/rinkpane "
	if got := sh(t, dir, alone+"--version"); !strings.HasPrefix(got, "rinkpane version 0.1.0") {
		t.Errorf("alone it says %q", got)
	}
	if got := sh(t, dir, alone+"people add 'A. Nyberg' --role planner --data /data <<E\nmany words for a door\nE"); !strings.Contains(got, "A. Nyberg") {
		t.Errorf("alone, with a folder of its own, it says %q", got)
	}
}
