package house

import (
	"bufio"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// readmeRuns is how the README starts the program; the test puts the built
// program in its place.
const readmeRuns = "go run ./cmd/rinkpane"

// fewestCommands is how many commands the README must show to be believed.
const fewestCommands = 4

// TestReadmeCommands runs every command that the README shows, in its order and
// in one empty folder with nothing but the examples, as a newcomer would.
func TestReadmeCommands(t *testing.T) {
	bin := filepath.Join(t.TempDir(), "rinkpane")
	if out, err := exec.Command("go", "build", "-o", bin, "./cmd/rinkpane").CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "examples"), os.DirFS("examples")); err != nil {
		t.Fatal(err)
	}
	ran := 0
	for _, command := range readmeCommands(t) {
		if strings.HasPrefix(command, "make ") {
			continue // this is one of them
		}
		if !strings.HasPrefix(command, readmeRuns+" ") {
			t.Errorf("README shows %q: show only %s and make, so that this test can run it", command, readmeRuns)
			continue
		}
		ran++
		if strings.HasPrefix(command, readmeRuns+" desk") {
			runDesk(t, dir, bin, strings.Fields(command)[3:])
			continue
		}
		run := exec.Command("sh", "-c", strings.ReplaceAll(command, readmeRuns, bin))
		run.Dir = dir
		if out, err := run.CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", command, err, out)
		}
	}
	if ran < fewestCommands {
		t.Errorf("ran %d commands of the README, expected %d or more", ran, fewestCommands)
	}
}

// TestReadmeStartsWithTwoCommands keeps the promise of the first screen.
func TestReadmeStartsWithTwoCommands(t *testing.T) {
	got := readmeCommands(t)
	want := []string{readmeRuns + " plan", "make test"}
	if len(got) < 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("README's first commands are %q, expected %q", got, want)
	}
}

// readmeCommands returns the lines of the README's sh blocks without remarks.
func readmeCommands(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		for line := range strings.Lines(block[1]) {
			line, _, _ = strings.Cut(line, " #")
			if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
				out = append(out, line)
			}
		}
	}
	return out
}

// deskPatience is how long the desk may take to open or to close.
const deskPatience = 2 * time.Minute

// runDesk opens the desk on a free port, reads its first page, and closes it as Ctrl-C does.
func runDesk(t *testing.T, dir, bin string, args []string) {
	t.Helper()
	run := exec.Command(bin, append(args, "--addr", "127.0.0.1:0", "--data", t.TempDir())...)
	run.Dir = dir
	out, err := run.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := run.Start(); err != nil {
		t.Fatal(err)
	}
	limit := time.AfterFunc(deskPatience, func() { _ = run.Process.Kill() })
	defer limit.Stop()
	lines := bufio.NewScanner(out)
	url := ""
	for url == "" && lines.Scan() {
		url = regexp.MustCompile(`http://\S+`).FindString(lines.Text())
	}
	if url == "" {
		t.Errorf("the desk never said where it is open")
	} else if answer, err := http.Get(url); err != nil || answer.StatusCode != http.StatusOK {
		t.Errorf("the desk's first page: %v, %v", answer, err)
	}
	if err := run.Process.Signal(os.Interrupt); err != nil {
		t.Error(err)
	}
	for lines.Scan() { // let it say goodbye
	}
	if err := run.Wait(); err != nil {
		t.Errorf("the desk closed with %v, expected exit 0", err)
	}
}
