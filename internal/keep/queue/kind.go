package queue

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"time"
)

// Kind is one kind of long work: how a question becomes an answer, both as JSON.
type Kind[Q, A any] struct {
	Name  string
	Limit time.Duration // of one try; after it the try has failed
	Do    func(ctx context.Context, q Q, b Bench) (A, error)
}

// Bench is what work finds at its place.
type Bench struct {
	Tell func(stage string, share float64)                    // how far the work is; may be called often, by several at once
	Keep func(ctx context.Context, data []byte) (Name, error) // keeps a large result
}

// Doer is a kind of any question and answer.
type Doer interface {
	name() string
	do(ctx context.Context, question []byte, b Bench) ([]byte, error)
}

func (k Kind[Q, A]) name() string { return k.Name }

func (k Kind[Q, A]) do(ctx context.Context, question []byte, b Bench) ([]byte, error) {
	var q Q
	if err := json.Unmarshal(question, &q); err != nil {
		return nil, fmt.Errorf("reading the question: %w", err)
	}
	timed, stop := context.WithTimeoutCause(ctx, k.Limit, fmt.Errorf("it took longer than %v", k.Limit))
	defer stop()
	a, err := k.Do(timed, q, b)
	if err != nil {
		if timed.Err() != nil {
			err = context.Cause(timed)
		}
		return nil, err
	}
	return json.Marshal(a)
}

// Ask asks a question about something, for an owner; see [Queue.ask].
func (k Kind[Q, A]) Ask(ctx context.Context, on *Queue, by Asker, about string, q Q) (Piece, error) {
	text, err := json.Marshal(q)
	if err != nil {
		return Piece{}, err
	}
	return on.ask(ctx, by, Piece{ID: k.id(on, text), Kind: k.Name, About: about, Owner: by.Owner}, text)
}

// ID is how a question's piece is known, whether anybody asked it or not.
func (k Kind[Q, A]) ID(on *Queue, q Q) (string, error) {
	text, err := json.Marshal(q)
	return k.id(on, text), err
}

func (k Kind[Q, A]) id(on *Queue, question []byte) string {
	sum := sha256.New()
	for _, part := range [][]byte{[]byte(k.Name), []byte(on.Program), question} {
		fmt.Fprintf(sum, "%d ", len(part))
		sum.Write(part)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Answer returns the answer of a piece that is done.
func (k Kind[Q, A]) Answer(ctx context.Context, on *Queue, id string) (a A, err error) {
	text, err := on.answer(ctx, id)
	if err == nil {
		err = json.Unmarshal(text, &a)
	}
	return a, err
}
