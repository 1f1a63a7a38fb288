// Package work answers: which kinds of long work are there, and what does each?
//
//	choose   an arena is checked, and its best legal set chosen   league.Question -> league.Answer
//	book     an arena's book is set                               BookQuestion    -> BookAnswer
//	season   all games of a season are seated                     league.Season   -> league.Played
//	recap    the frames of a game are looked back on              league.Look     -> league.Looked
//
// A question holds all that it is answered from, as texts: any machine may answer it. The
// functions are those of the commands of the same names.
package work

import (
	"cmp"
	"context"
	"time"

	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/draw/book"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/measure/cores"
)

// limit is how long one try of a job may take; own choice, far above what an arena or a
// season takes.
const limit = 20 * time.Minute

// Kinds are all kinds of jobs; creator is the program that stands in files.
func Kinds(creator string) []queue.Doer {
	return []queue.Doer{Choose(), Book(creator), Season(), Recap()}
}

// kind is a kind whose function tells its progress by [cores.Tell].
func kind[Q, A any](name string, do func(Q, context.Context) (A, error)) queue.Kind[Q, A] {
	return queue.Kind[Q, A]{Name: name, Limit: limit, Do: func(ctx context.Context, q Q, b queue.Bench) (A, error) {
		return do(q, cores.Told(ctx, b.Tell))
	}}
}

// Choose checks an arena and chooses its best set.
func Choose() queue.Kind[league.Question, league.Answer] {
	return kind("choose", league.Question.Choose)
}

// Season seats all games of a season.
func Season() queue.Kind[league.Season, league.Played] { return kind("season", league.Season.Play) }

// Recap looks back on the frames of a game.
func Recap() queue.Kind[league.Look, league.Looked] { return kind("recap", league.Look.Ask) }

// BookQuestion is what is asked for an arena's book.
type BookQuestion struct {
	league.Question
	Paper string // "": the usual one of the arena's units
}

// BookAnswer is where an arena's book lies.
type BookAnswer struct {
	File    queue.Name
	Pages   int
	Without string // why there is no book, "" where there is one
}

// Book sets an arena's book.
func Book(creator string) queue.Kind[BookQuestion, BookAnswer] {
	return queue.Kind[BookQuestion, BookAnswer]{Name: "book", Limit: limit, Do: func(ctx context.Context, q BookQuestion, b queue.Bench) (out BookAnswer, err error) {
		doc, maker, err := q.Open()
		if err != nil {
			return out, err
		}
		ar, err := doc.Check()
		if err != nil {
			return out, err
		}
		if len(ar.Working()) == 0 {
			return BookAnswer{Without: "the arena has no working hole; a book needs one to be about"}, nil
		}
		paper, err := sheet.ParsePaper(cmp.Or(q.Paper, sheet.UsualPaper(ar.Units)))
		if err != nil {
			return out, err
		}
		told := cores.Told(ctx, b.Tell)
		content, err := book.Gather(told, maker, doc, book.Options{
			Units: ar.Units, Paper: paper, Cut: cut.DefaultOptions(), Spares: cut.DefaultSpareOptions(), Creator: creator,
		})
		if err != nil {
			return out, err
		}
		print, err := content.PDF(told)
		if err != nil {
			return out, err
		}
		out.Pages = print.Pages
		out.File, err = b.Keep(ctx, print.Data)
		return out, err
	}}
}
