package picture

import (
	"bytes"
	"context"
	"image"
	"image/jpeg"
	"image/png"
	"net/http"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/desk/shell"
)

// A darkroom draws pictures, few at a time: each takes every core, so that more
// at once would only make all of them late. While a control is dragged, a
// browser gives up pictures that it no longer wants; they never begin.
type darkroom struct {
	places chan struct{} // being drawn
	queue  chan struct{} // being drawn or waiting
}

// How many pictures are drawn at once and how many may wait; own choice.
const (
	drawnAtOnce = 2
	mostWaiting = 24
)

// errQueue says that too many wait for pictures.
var errQueue error = &shell.Refusal{Status: http.StatusServiceUnavailable, What: "Too many pictures are asked for at once.", Cure: "Wait a moment.", WaitUntil: "1"}

func newDarkroom() *darkroom {
	return &darkroom{make(chan struct{}, drawnAtOnce), make(chan struct{}, drawnAtOnce+mostWaiting)}
}

// draw calls work when there is room for it. It returns ctx's error when the
// visitor gave up first.
func (d *darkroom) draw(ctx context.Context, work func() error) error {
	select {
	case d.queue <- struct{}{}:
		defer func() { <-d.queue }()
	default:
		return errQueue
	}
	select {
	case d.places <- struct{}{}:
		defer func() { <-d.places }()
	case <-ctx.Done():
		return ctx.Err()
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	return work()
}

// previewQuality is that of a preview's JPEG: seen for a moment.
const previewQuality = 80

// encode writes a picture as "png" or "jpg".
func encode(shot *frame.Shot, im image.Image, kind string) ([]byte, error) {
	var out bytes.Buffer
	if kind == "jpg" {
		err := jpeg.Encode(&out, im, &jpeg.Options{Quality: previewQuality})
		return out.Bytes(), err
	}
	err := shot.WritePNG(&out, im, png.BestSpeed)
	return out.Bytes(), err
}
