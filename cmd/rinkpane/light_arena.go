package main

import (
	"fmt"
	"io"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// runLightArena answers for every hole and zone of an arena.
func runLightArena(a *app, path string, f lightFlags) error {
	ar, err := readArena(a, path)
	if err != nil {
		return err
	}
	q, err := f.request(a, ar)
	if err != nil {
		return err
	}
	r, err := light.Compute(ar, q)
	if err != nil {
		return err
	}
	if err := a.print(wire.LightOf(r, ar.Units), func(w io.Writer) {
		io.WriteString(w, words.LightReport(r, q.Wanted, ar.Units))
		writeAssumed(w, r.Assumed, ar.Units)
	}); err != nil {
		return err
	}
	if !r.Known {
		return errAnswerNo
	}
	return nil
}

// request gathers the flags; with none of shutter, stop and ISO the usual setting is meant.
func (f lightFlags) request(a *app, ar arena.Arena) (light.Request, error) {
	k, err := readKit(a, f.kit)
	if err != nil {
		return light.Request{}, err
	}
	lens, body, err := pickKit(k, ar, f.lens, f.body)
	if err != nil {
		return light.Request{}, err
	}
	q := light.Request{Wanted: f.wanted(), Calibration: f.constant(), Uniform: f.lux, Mains: f.mains, Holes: f.holes, Body: body, Lens: unit.Known(lens)}
	if !known(f.shutter) && !known(f.stop) && !known(f.iso) {
		q.Wanted = light.Usual()
	}
	return q, nil
}

func known[T any](m unit.Maybe[T]) bool {
	_, ok := m.Get()
	return ok
}

// readKit reads the kit file that a user named, or the built-in one.
func readKit(a *app, path string) (kit.Kit, error) {
	if path == "" {
		return kit.Default()
	}
	var k kit.Kit
	err := withInput(a, path, func(name string, r io.Reader) (err error) {
		k, err = kit.Read(name, r)
		return err
	})
	return k, err
}

// pickKit returns the lens and the body that were named, or the usual ones.
func pickKit(k kit.Kit, ar arena.Arena, lens, body string) (kit.Lens, kit.Body, error) {
	l, err := k.PickLens(lens, ar.Lenses)
	if err != nil {
		return l, kit.Body{}, fmt.Errorf("--%w", err)
	}
	b, err := k.PickBody(body)
	if err != nil {
		return l, b, fmt.Errorf("--%w", err)
	}
	return l, b, nil
}
