package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/tell/wire"
)

// oneFile accepts the name of one file.
func oneFile(c *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("%s needs the name of one file, as in: %s rinkpane.backup", c.Name(), c.CommandPath())
	}
	return nil
}

func backupCommand(a *app) *cobra.Command {
	var place storePlace
	var out target
	c := &cobra.Command{
		Use:   "backup FILE",
		Short: "Write all that the desk keeps into one file, while it runs",
		Long: "Writes arenas with all their versions, people, covers, inspections, incidents and photos as they are\n" +
			"at one moment into one file, whichever database they are kept in. The file holds passwords' hashes:\n" +
			"keep it as safe as the store. The SHA-256 printed is the whole file's, as sha256sum tells it.",
		Example: "  rinkpane backup rinkpane.backup\n  rinkpane backup rinkpane.backup --db postgres://rinkpane@localhost/rinkpane",
		Args:    oneFile,
	}
	place.flags(c)
	c.Flags().BoolVar(&out.force, "force", false, "replace what is there already")
	c.RunE = func(c *cobra.Command, args []string) error {
		out.path = args[0]
		if err := mayWrite(out.path, out.force); err != nil {
			return err
		}
		s, err := place.look(c.Context())
		if err != nil {
			return err
		}
		defer s.Close()
		n, sum, err := writeBackup(c.Context(), s, out)
		if err != nil {
			return err
		}
		return a.print(wire.Object{"bytes", n, "sha256", sum, "file", out.path}, func() string {
			return fmt.Sprintf("wrote %s, %d bytes\nsha256 %s\n", out.path, n, sum)
		})
	}
	return c
}

// writeBackup writes the file under another name first, so that it is there whole or not at all.
func writeBackup(ctx context.Context, s *store.Store, out target) (n int64, sum string, err error) {
	f, err := os.CreateTemp(filepath.Dir(out.path), ".rinkpane-*")
	if err != nil {
		return 0, "", plainPathError(err)
	}
	defer os.Remove(f.Name()) // gone already when all went well
	hash := sha256.New()
	err = s.Backup(ctx, filepath.Dir(out.path), io.MultiWriter(f, hash))
	info, statErr := f.Stat()
	if err := errors.Join(err, statErr, f.Sync(), f.Close()); err != nil {
		return 0, "", err
	}
	if err := plainPathError(os.Rename(f.Name(), out.path)); err != nil {
		return 0, "", err
	}
	return info.Size(), hex.EncodeToString(hash.Sum(nil)), nil
}

func restoreCommand(a *app) *cobra.Command {
	var place storePlace
	c := &cobra.Command{
		Use:   "restore FILE",
		Short: "Bring back all that a backup holds, into an empty folder or database",
		Long: "Reads a file that rinkpane backup wrote, proves by its SHA-256 that not a bit has changed, and\n" +
			"restores it. It overwrites nothing: the folder must hold no store yet, the database must be empty.",
		Example: "  rinkpane restore rinkpane.backup --data new-folder\n  rinkpane restore rinkpane.backup --db postgres://rinkpane@localhost/empty",
		Args:    oneFile,
	}
	place.flags(c)
	c.RunE = func(c *cobra.Command, args []string) error {
		n, sum, err := restore(c.Context(), args[0], place)
		if err != nil {
			return err
		}
		return a.print(wire.Object{"bytes", n, "sha256", sum, "file", args[0]}, func() string {
			return fmt.Sprintf("restored %s, %d bytes\nsha256 %s\n", args[0], n, sum)
		})
	}
	return c
}

func restore(ctx context.Context, path string, place storePlace) (n int64, sum string, err error) {
	f, err := os.Open(path)
	if err != nil {
		return 0, "", plainPathError(err)
	}
	defer f.Close()
	scratch, err := os.MkdirTemp("", "rinkpane-restore-")
	if err != nil {
		return 0, "", err
	}
	defer os.RemoveAll(scratch)
	hash, size := sha256.New(), new(counter)
	from, err := store.Unpack(ctx, io.TeeReader(f, io.MultiWriter(hash, size)), scratch)
	if err != nil {
		return 0, "", fmt.Errorf("%s: %w", path, err)
	}
	defer from.Close()
	to, err := place.open(ctx)
	if err != nil {
		return 0, "", err
	}
	defer to.Close()
	if err := to.Restore(ctx, from); err != nil {
		return 0, "", fmt.Errorf("%s: %w", place.name(), err)
	}
	return int64(*size), hex.EncodeToString(hash.Sum(nil)), nil
}

// counter counts what is written to it.
type counter int64

func (c *counter) Write(b []byte) (int, error) { *c += counter(len(b)); return len(b), nil }
