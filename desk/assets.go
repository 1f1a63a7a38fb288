package desk

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
	"net/http"
	"path"
)

//go:embed assets
var assetFiles embed.FS

// assetTypes are the kinds of file that the desk serves.
var assetTypes = map[string]string{
	".css": "text/css; charset=utf-8",
	".js":  "text/javascript; charset=utf-8",
	".svg": "image/svg+xml",
}

// assetSet holds the embedded files and one hash over all of them. The hash
// stands in their addresses, so that a browser may keep them for good; modules
// import one another by relative names and stay in the same folder.
type assetSet struct {
	hash  string
	files map[string][]byte
}

func loadAssets() (assetSet, error) {
	set := assetSet{files: map[string][]byte{}}
	sum := sha256.New()
	entries, err := fs.ReadDir(assetFiles, "assets") // in order of names
	if err != nil {
		return set, err
	}
	for _, e := range entries {
		text, err := assetFiles.ReadFile("assets/" + e.Name())
		if err != nil {
			return set, err
		}
		if assetTypes[path.Ext(e.Name())] == "" {
			return set, fmt.Errorf("asset %s: its kind of file is not served", e.Name())
		}
		set.files[e.Name()] = text
		fmt.Fprintf(sum, "%s %d\n", e.Name(), len(text))
		sum.Write(text)
	}
	set.hash = hex.EncodeToString(sum.Sum(nil))[:12]
	return set, nil
}

// address returns where an asset is served; an unknown one is an error, so that
// a page with a wrong name does not render.
func (s assetSet) address(name string) (string, error) {
	if _, ok := s.files[name]; !ok {
		return "", fmt.Errorf("no asset %q", name)
	}
	return "/assets/" + s.hash + "/" + name, nil
}

func (d *Desk) asset(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	text, ok := d.assets.files[name]
	if !ok || r.PathValue("hash") != d.assets.hash {
		d.nowhere(w, r)
		return
	}
	w.Header().Set("Content-Type", assetTypes[path.Ext(name)])
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	_, _ = w.Write(text) // the visitor may have left
}

// icon answers the browsers that ask for an icon by its old name.
func (d *Desk) icon(w http.ResponseWriter, r *http.Request) {
	to, err := d.assets.address("icon.svg")
	if err != nil {
		d.broken(w, r, err)
		return
	}
	http.Redirect(w, r, to, http.StatusMovedPermanently)
}
