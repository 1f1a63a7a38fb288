package frames

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// shot is the files of one frame: pictures of one name but for its end, and what else
// says something of it.
type shot struct {
	pictures []string
	sidecars []string
}

// list finds the shots in folders and files, in the order of their names, and what
// leads nowhere. Hidden files and folders are passed over.
func list(ctx context.Context, paths []string) (shots []shot, troubles []Trouble, err error) {
	at := map[string]int{}
	add := func(path string) {
		end := strings.ToLower(filepath.Ext(path))
		sidecar := end == sidecarEnd
		if !sidecar && !isPicture(end) {
			return
		}
		stem := strings.TrimSuffix(path, filepath.Ext(path))
		if inner := strings.ToLower(filepath.Ext(stem)); sidecar && isPicture(inner) {
			stem = strings.TrimSuffix(stem, filepath.Ext(stem)) // name.jpg.xmp
		}
		i, met := at[stem]
		if !met {
			i, shots = len(shots), append(shots, shot{})
			at[stem] = i
		}
		if sidecar {
			shots[i].sidecars = append(shots[i].sidecars, path)
		} else {
			shots[i].pictures = append(shots[i].pictures, path)
		}
	}
	for _, root := range paths {
		if _, err := os.Stat(root); err != nil {
			return nil, nil, err
		}
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			switch hidden := strings.HasPrefix(filepath.Base(path), ".") && path != root; {
			case ctx.Err() != nil:
				return ctx.Err()
			case err != nil:
				troubles = append(troubles, Trouble{path, Unreadable, err})
				return nil
			case d.IsDir() && hidden:
				return fs.SkipDir
			case d.IsDir() || hidden:
				return nil
			case d.Type()&fs.ModeSymlink != 0:
				if c, err := unlinked(path); c != "" {
					troubles = append(troubles, Trouble{path, c, err})
					return nil
				}
			}
			add(path)
			return nil
		})
		if err != nil && !errors.Is(err, fs.SkipDir) {
			return nil, nil, err
		}
	}
	return shots, troubles, nil
}
