package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/measure/form"
)

// storePlace is where the desk keeps what happens, as the flags name it.
type storePlace struct {
	folder, dsn string
}

func (p *storePlace) flags(c *cobra.Command) {
	c.Flags().StringVar(&p.folder, "data", "", "folder of the built-in store (default: rinkpane in the user's data folder)")
	c.Flags().StringVar(&p.dsn, "db", "", "keep everything in this PostgreSQL database instead: postgres://user@host/name")
}

// open opens the store, and makes the built-in one and its folder when they are absent.
func (p *storePlace) open(ctx context.Context) (*store.Store, error) {
	if p.dsn != "" {
		if p.folder != "" {
			return nil, errors.New("--data and --db name two stores; keep one of them")
		}
		return store.OpenDSN(ctx, p.dsn)
	}
	folder, err := p.inFolder()
	if err != nil {
		return nil, err
	}
	// Passwords' hashes lie in it: the folder is the user's own.
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, fmt.Errorf("--data: %w", plainPathError(err))
	}
	return store.OpenFolder(ctx, folder)
}

// look opens a store that is there already: who only reads makes none.
func (p *storePlace) look(ctx context.Context) (*store.Store, error) {
	if p.dsn == "" {
		folder, err := p.inFolder()
		if err != nil {
			return nil, err
		}
		if _, err := os.Stat(filepath.Join(folder, store.FileName)); err != nil {
			return nil, fmt.Errorf("--data: no desk keeps anything in %s (it holds no %s); name the folder that the desk was started with, or start one there: rinkpane desk --data FOLDER", form.Quote(folder), store.FileName)
		}
	}
	return p.open(ctx)
}

// inFolder is the folder of the built-in store.
func (p *storePlace) inFolder() (string, error) {
	if p.folder != "" {
		return p.folder, nil
	}
	return dataFolder()
}

// name says in a message where the store is, without what signs in to it.
func (p *storePlace) name() string {
	switch {
	case p.dsn != "":
		return "the database"
	case p.folder != "":
		return p.folder
	}
	return "the user's data folder"
}

// dataFolder is the program's folder among the user's data, by the XDG base
// directory specification: $XDG_DATA_HOME, else ~/.local/share.
func dataFolder() (string, error) {
	if base := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(base) {
		return filepath.Join(base, "rinkpane"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", errors.New("no home folder to keep the arenas in: name a folder with --data")
	}
	return filepath.Join(home, ".local", "share", "rinkpane"), nil
}
