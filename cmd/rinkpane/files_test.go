package main

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

func TestWriteFolderKeepsWhatIsThere(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "plan")
	first := []outFile{{"a.txt", []byte("one")}, {"sub/b.txt", []byte("two")}}
	if err := writeFolder(dir, first, false); err != nil {
		t.Fatal(err)
	}
	second := []outFile{{"c.txt", []byte("new")}, {"a.txt", []byte("changed")}}
	err := writeFolder(dir, second, false)
	if err == nil || !strings.Contains(err.Error(), "--force") {
		t.Fatalf("overwriting gave %v, expected a refusal that names --force", err)
	}
	if _, err := os.Stat(filepath.Join(dir, "c.txt")); err == nil {
		t.Error("a refused folder was half written")
	}
	if err := writeFolder(dir, second, true); err != nil {
		t.Fatal(err)
	}
	assertFiles(t, dir, map[string]string{"a.txt": "changed", "sub/b.txt": "two", "c.txt": "new"})
}

func TestWriteFolderLeavesNothingBehind(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "taken"), 0o777); err != nil {
		t.Fatal(err)
	}
	cases := map[string]outFile{
		"is a folder":       {"taken", nil},
		"inside its folder": {"../out.txt", nil},
	}
	for want, f := range cases {
		err := writeFolder(dir, []outFile{{"first.txt", nil}, f}, true)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("writing %s gave %v, expected %q", f.name, err, want)
		}
	}
	assertFiles(t, dir, map[string]string{})
}

func TestWriteFileNamesAnUnwritablePlace(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	err := writeFile(filepath.Join(blocked, "x.txt"), nil, false)
	if err == nil || !strings.Contains(err.Error(), blocked) {
		t.Errorf("got %v, expected the path %s", err, blocked)
	}
}

// assertFiles compares every file below dir with want, temporary ones included.
// TestAFailedWriteLeavesNothing fails at the second of two files: the first is not
// there, nor are the folders that were made for them, nor anything hidden; what
// was there before stays.
func TestAFailedWriteLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	old := filepath.Join(dir, "old")
	if err := os.Mkdir(old, 0o777); err != nil {
		t.Fatal(err)
	}
	blocked := filepath.Join(dir, "file")
	if err := os.WriteFile(blocked, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, second := range []string{filepath.Join(dir, "new", strings.Repeat("x", 300)), filepath.Join(blocked, "x.txt")} {
		err := writeFiles([]outFile{{filepath.Join(dir, "new", "deep", "a.txt"), []byte("one")}, {filepath.Join(old, "b.txt"), nil}, {second, nil}}, false)
		if err == nil || strings.Contains(err.Error(), ".rinkpane") {
			t.Errorf("%.80s: %v, expected the file itself named", second, err)
		}
	}
	assertFiles(t, dir, map[string]string{"file": "mine"})
	left, err := os.ReadDir(dir)
	if err != nil || len(left) != 2 {
		t.Errorf("%v, %v are left", left, err)
	}
}

func TestAFullDiskIsSaid(t *testing.T) {
	err := unwritten("plan/a.pdf", &os.PathError{Op: "write", Path: "plan/.rinkpane-1-0", Err: syscall.ENOSPC})
	if got, want := err.Error(), "plan/a.pdf: cannot be written: no space left on device; nothing was written: free some room, or choose another place"; got != want {
		t.Errorf("%s, expected %s", got, want)
	}
}

// TestFilesObeyTheUmask writes for a user who shares nothing, and for one who
// shares all with a group.
func TestFilesObeyTheUmask(t *testing.T) {
	for mask, want := range map[int]os.FileMode{0o077: 0o600, 0o002: 0o664} {
		path := filepath.Join(t.TempDir(), "a.txt")
		was := syscall.Umask(mask)
		err := writeFile(path, []byte("x"), false)
		syscall.Umask(was)
		if err != nil {
			t.Fatal(err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != want {
			t.Errorf("umask %03o: %v, %v, expected %v", mask, info.Mode().Perm(), err, want)
		}
	}
}

func assertFiles(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(p)
		rel, _ := filepath.Rel(dir, p)
		got[filepath.ToSlash(rel)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != len(want) {
		t.Errorf("found %v, expected %v", got, want)
	}
	for name, text := range want {
		if got[name] != text {
			t.Errorf("%s holds %q, expected %q", name, got[name], text)
		}
	}
}
