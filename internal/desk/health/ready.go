package health

import (
	"context"
	"errors"
	"net/http"
	"time"
)

// How long the store may take to answer, and for how long its answer holds, so that
// asking often costs little; own choice.
const (
	pingTimeout = 2 * time.Second
	answerHolds = time.Second
)

// Why a desk is not ready.
var (
	errClosing = errors.New("closing")
	errStore   = errors.New("the store does not answer")
)

// Front answers GET /health and GET /ready before anything else does, without a
// sign-in: 200, or 503 with the reason. The rest goes to next.
func (m *Monitor) Front(next http.Handler) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /health", func(w http.ResponseWriter, _ *http.Request) { tell(w, nil) })
	mux.HandleFunc("GET /ready", func(w http.ResponseWriter, r *http.Request) { tell(w, m.ready(r.Context())) })
	mux.Handle("/", next)
	return mux
}

func tell(w http.ResponseWriter, err error) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	words := "well"
	if err != nil {
		w.WriteHeader(http.StatusServiceUnavailable)
		words = err.Error()
	}
	_, _ = w.Write([]byte(words + "\n")) // whoever asked may have left
}

// ready says why the desk is not ready; nil when it is.
func (m *Monitor) ready(ctx context.Context) error {
	if m.closing.Load() {
		return errClosing
	}
	if m.Ping == nil {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if now := m.Now(); m.asked.IsZero() || now.Sub(m.asked) >= answerHolds {
		ctx, stop := context.WithTimeout(context.WithoutCancel(ctx), pingTimeout)
		defer stop()
		m.asked, m.answer = now, nil
		if m.Ping(ctx) != nil {
			m.answer = errStore
		}
	}
	return m.answer
}
