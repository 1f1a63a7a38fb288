package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/measure/form"
)

// openGames reads a games document under the rule sets that flags name, else those of its
// arena; open opens what it names, as [besideGames].
func (s *source) openGames(a *app, path string, open game.Files) (season game.Season, err error) {
	if err = withInput(a, path, func(name string, r io.Reader) (err error) {
		season, err = game.Read(name, r, open)
		return err
	}); err != nil {
		return season, err
	}
	s.asksRules, s.arena = true, season.Arena
	at := season.ArenaFile
	if !filepath.IsAbs(at) {
		at = filepath.Join(filepath.Dir(path), at)
	}
	if err = s.follow(a, at); err == nil {
		err = s.outfit(a)
	}
	return season.Under(s.Rules), err
}

// pickGame returns the game that a flag names, of a document that has one game that one.
func pickGame(s game.Season, path, id string) (game.Game, error) {
	if id == "" && len(s.Games) == 1 {
		return s.Games[0], nil
	}
	if id == "" {
		return game.Game{}, fmt.Errorf("%s has %d games; name one with --game", path, len(s.Games))
	}
	var ids []string
	for _, g := range s.Games {
		ids = append(ids, g.ID)
	}
	if err := form.Known("game", id, ids); err != nil {
		return game.Game{}, fmt.Errorf("--game: %w", err)
	}
	g, _ := s.Game(id)
	return g, nil
}

// besideGames opens the files that a games document names: by their path from its folder,
// or arenas that the program carries.
func besideGames(games string) game.Files {
	dir := filepath.Dir(games)
	return func(path string) (io.ReadCloser, error) {
		at := path
		if !filepath.IsAbs(at) {
			at = filepath.Join(dir, path)
		}
		f, err := os.Open(at)
		if err == nil {
			return f, nil
		}
		if carried, err := examples.Files.Open(path); err == nil {
			return carried, nil
		}
		return nil, plainPathError(err)
	}
}
