package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// Every module that is linked into the program has its licence in it, of the version
// that is linked; scripts/licences writes the file anew.
func TestLicencesOfEveryModule(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	linked := strings.Split(strings.TrimSpace(string(out)), "\n")
	slices.Sort(linked)
	linked = slices.DeleteFunc(slices.Compact(linked), func(s string) bool { return s == "" })
	linked = append(linked, "the Go fonts", "the Go standard library")
	if len(linked) < 20 {
		t.Fatalf("only %d modules: %v", len(linked), linked)
	}
	var carried []string
	for line := range strings.Lines(licenceTexts) {
		if of, ok := strings.CutPrefix(strings.TrimSpace(line), licenceHead); ok {
			carried = append(carried, of)
		}
	}
	for _, m := range linked {
		if !slices.Contains(carried, m) {
			t.Errorf("no licence of %s: run scripts/licences", m)
		}
	}
	for _, m := range carried {
		if !slices.Contains(linked, m) {
			t.Errorf("a licence of %s, which is not linked: run scripts/licences", m)
		}
	}
	if n := strings.Count(licenceTexts, "Copyright"); n < len(linked) {
		t.Errorf("%d copyright lines for %d parts", n, len(linked))
	}
}
