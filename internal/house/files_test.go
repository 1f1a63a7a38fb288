package house

import (
	"bytes"
	"os"
	"path"
	"slices"
	"strings"
	"testing"
)

// Limits on files of code: a file that needs a search to find one's place is
// two files.
const (
	mostLines  = 400
	fewestCode = 20 // files the walk must meet to be believed
)

// codeSuffixes are the kinds of file that people write and read as code.
var codeSuffixes = []string{".go", ".js", ".css", ".tmpl", ".sh", ".sql"}

// TestNoLongFiles keeps every file of code short.
func TestNoLongFiles(t *testing.T) {
	seen := 0
	err := walkTracked(func(name string) error {
		if !slices.Contains(codeSuffixes, path.Ext(name)) {
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		seen++
		if n := bytes.Count(text, []byte("\n")); n > mostLines {
			t.Errorf("%s has %d lines, at most %d: split it by topic", name, n, mostLines)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < fewestCode {
		t.Errorf("read %d files of code, expected %d or more", seen, fewestCode)
	}
}

// bannedWords are marks of unfinished work. They are written in halves so that
// this file passes its own test.
var bannedWords = []string{"TO" + "DO", "FIX" + "ME", "HACK" + ":", "not implemented" + " yet", "lorem" + " ipsum"}

// bannedFolders are names that say nothing of what a package holds.
var bannedFolders = []string{"util", "utils", "common", "helpers", "models", "misc"}

// TestNothingUnfinished looks for marks of unfinished work and for folders whose
// name says nothing.
func TestNothingUnfinished(t *testing.T) {
	seen := 0
	err := walkTracked(func(name string) error {
		for part := range strings.SplitSeq(path.Dir(name), "/") {
			if slices.Contains(bannedFolders, part) {
				t.Errorf("%s: name the folder %q for what it holds", name, part)
			}
		}
		text, err := os.ReadFile(name)
		if err != nil || bytes.IndexByte(text, 0) >= 0 {
			return err
		}
		seen++
		for _, word := range bannedWords {
			if at := bytes.Index(text, []byte(word)); at >= 0 {
				t.Errorf("%s:%d: %q: finish it or take it out", name, 1+bytes.Count(text[:at], []byte("\n")), word)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < fewestCode {
		t.Errorf("read %d text files, expected %d or more", seen, fewestCode)
	}
}
