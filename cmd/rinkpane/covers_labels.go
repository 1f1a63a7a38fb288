package main

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/draw/label"
	"example.org/rinkpane/internal/tell/wire"
)

// labels is the sheet of labels that command covers writes when asked.
type labels struct {
	out           target
	paper, atDesk string
}

// write writes a label for every cover of the arenas told.
func (l labels) write(ctx context.Context, all []wire.Minding) error {
	if l.out.path == "" {
		return nil
	}
	p, err := label.ParsePaper(l.paper)
	if err != nil {
		return err
	}
	var list []label.Label
	for _, m := range all {
		for _, c := range m.Board.Covers {
			list = append(list, label.Label{Cover: c.ID, Hole: c.Hole, Arena: m.Arena, Says: label.Address(l.atDesk, m.Arena, c.ID)})
		}
	}
	if len(list) == 0 {
		return errors.New("--labels: no cover has an id yet; give covers their ids on the desk first")
	}
	data, err := label.PDF(ctx, list, p, "rinkpane "+release)
	if err != nil {
		return err
	}
	return l.out.write(data)
}
