package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/keep/frames"
)

// read reads the frames in folders, and what an earlier run wrote of other frames.
func (f recapFlags) read(ctx context.Context, a *app, paths []string) (out recap.Readings, err error) {
	var folders []string
	for _, path := range paths {
		if !strings.EqualFold(filepath.Ext(path), ".csv") {
			folders = append(folders, path)
			continue
		}
		err := withInput(a, path, func(name string, r io.Reader) error {
			read, err := recap.ReadReadings(name, r)
			out = out.With(read)
			return err
		})
		if err != nil {
			return out, err
		}
	}
	if len(folders) == 0 {
		return out, nil
	}
	found, err := f.folders(ctx, folders)
	return out.With(recap.Readings{Frames: found.Frames, Unread: unread(found.Troubles)}), err
}

// folders reads the frames in folders, with the journal when one is named.
func (f recapFlags) folders(ctx context.Context, dirs []string) (frames.Found, error) {
	if f.journal == "" {
		return frames.Read(ctx, dirs, nil)
	}
	file, err := os.OpenFile(f.journal, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o666)
	if err != nil {
		return frames.Found{}, fmt.Errorf("--journal: %w", plainPathError(err))
	}
	defer file.Close()
	j, err := frames.NewJournal(file)
	if err != nil {
		return frames.Found{}, fmt.Errorf("--journal %s: %w", f.journal, err)
	}
	return frames.Read(ctx, dirs, j)
}

// unread counts the files that are no frames by cause.
func unread(list []frames.Trouble) (out []recap.Unread) {
	for _, t := range list {
		i := slices.IndexFunc(out, func(u recap.Unread) bool { return u.Cause == string(t.Cause) })
		if i < 0 {
			i, out = len(out), append(out, recap.Unread{Cause: string(t.Cause), First: filepath.Base(t.File)})
		}
		out[i].Files++
	}
	return out
}
