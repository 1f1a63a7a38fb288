package shell

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"maps"
	"net/http"
	"path"
	"regexp"
	"slices"

	"example.org/rinkpane/internal/draw/chart"
)

// assetTypes are the kinds of file that the desk serves.
var assetTypes = map[string]string{
	".css": "text/css; charset=utf-8",
	".js":  "text/javascript; charset=utf-8",
	".svg": "image/svg+xml",
	".ttf": "font/ttf",
}

// assetSet holds the embedded files and one hash over all of them. The hash
// stands in their addresses, so that a browser may keep them for good; modules
// import one another by relative names and stay in the same folder.
type assetSet struct {
	hash   string
	files  map[string][]byte
	packed map[string][]byte // the same as gzip
}

// everywhere are the style sheets that every page of the desk needs, in their order:
// as one file they take fewer bytes and one question.
var everywhere = []string{"fonts.css", "theme.css", "page.css", "sheet.css", "drawing.css", "tables.css", "form.css", "plan.css", "survey.css"}

func loadAssets(folder fs.FS) (assetSet, error) {
	set := assetSet{files: fontFiles(), packed: map[string][]byte{}}
	entries, err := fs.ReadDir(folder, ".")
	if err != nil {
		return set, err
	}
	for _, e := range entries {
		text, err := fs.ReadFile(folder, e.Name())
		if err != nil {
			return set, err
		}
		set.files[e.Name()] = lean(e.Name(), text)
	}
	set.files["sheet.css"] = []byte(chart.Styles().CSS(".sheet"))
	set.files["guard.css"] = []byte(chart.GuardStyles().CSS(".sheet"))
	for _, name := range everywhere {
		set.files["all.css"] = append(set.files["all.css"], set.files[name]...)
	}
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(set.files)) {
		text := set.files[name]
		if assetTypes[path.Ext(name)] == "" {
			return set, fmt.Errorf("asset %s: its kind of file is not served", name)
		}
		fmt.Fprintf(sum, "%s %d\n", name, len(text))
		sum.Write(text)
		set.packed[name] = compressed(text)
	}
	set.hash = hex.EncodeToString(sum.Sum(nil))[:12]
	return set, nil
}

// Asset returns where an asset is served.
func (s *Shell) Asset(name string) (string, error) { return s.assets.address(name) }

// comment is a comment of a module or style sheet between its marks; no string of theirs
// holds such marks.
var comment = regexp.MustCompile(`(?s)/\*.*?\*/ ?`)

// lean takes off what only people who work on a module or style sheet read: comments and
// indentation. A string of theirs never spans lines.
func lean(name string, text []byte) []byte {
	if kind := path.Ext(name); kind != ".js" && kind != ".css" {
		return text
	}
	var out bytes.Buffer
	for line := range bytes.Lines(comment.ReplaceAll(text, nil)) {
		if line = bytes.TrimSpace(line); len(line) > 0 && !bytes.HasPrefix(line, []byte("//")) {
			out.Write(append(line, '\n'))
		}
	}
	return out.Bytes()
}

// imported is a module that another cannot run without.
var imported = regexp.MustCompile(`(?m)^import .*?"\./([\w-]+\.js)"`)

// needs returns where the modules are served that a module imports, and those that these
// do, so that a browser may ask for all at once and not for one after the other.
func (s assetSet) needs(module string) []string {
	known := []string{module}
	var out []string
	for i := 0; i < len(known); i++ {
		for _, m := range imported.FindAllSubmatch(s.files[known[i]], -1) {
			if name := string(m[1]); !slices.Contains(known, name) {
				known = append(known, name)
				out = append(out, "/assets/"+s.hash+"/"+name)
			}
		}
	}
	return out
}

// address returns where an asset is served; an unknown one is an error, so that
// a page with a wrong name does not render.
func (s assetSet) address(name string) (string, error) {
	if _, ok := s.files[name]; !ok {
		return "", fmt.Errorf("no asset %q", name)
	}
	return "/assets/" + s.hash + "/" + name, nil
}

func (s *Shell) asset(w http.ResponseWriter, r *http.Request) error {
	name := r.PathValue("name")
	text, ok := s.assets.files[name]
	if !ok || r.PathValue("hash") != s.assets.hash {
		return ErrNowhere
	}
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	Send(w, r, http.StatusOK, assetTypes[path.Ext(name)], text, s.assets.packed[name])
	return nil
}

// icon answers the browsers that ask for an icon by its old name.
func (s *Shell) icon(w http.ResponseWriter, r *http.Request) error {
	to, err := s.assets.address("icon.svg")
	if err == nil {
		http.Redirect(w, r, to, http.StatusMovedPermanently)
	}
	return err
}
