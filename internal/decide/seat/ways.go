package seat

import "slices"

// way is where somebody works in each period: a hole, or none.
type way []int8

const none = -1

// ways are all ways of one person through the periods of a night: so much for each
// hole in each period, less what a move between two periods in a row costs.
//
//	tail(p, h) = value(p, h) + max(tail(p+1, h), max over k of tail(p+1, k) - move, idle(p+2))
//	idle(p)    = max(idle(p+1), max over k of tail(p, k))
//
// tail is the best from period p on that begins with hole h, idle the best from
// period p on for who has no hole before it.
type ways[T int64 | float64] struct {
	holes, periods int
	value          []T // by period * holes + hole
	move           T
	tail, idle     []T
}

func newWays[T int64 | float64](periods, holes int) *ways[T] {
	return &ways[T]{holes: holes, periods: periods, value: make([]T, periods*holes), tail: make([]T, periods*holes), idle: make([]T, periods+1)}
}

// best works the tails out and returns what the best way is worth, 0 or more.
func (w *ways[T]) best() T {
	for p := w.periods - 1; p >= 0; p-- {
		var moved T // or not seated in the next period
		var next []T
		if p+1 < w.periods {
			next = w.of(w.tail, p+1)
			moved = max(w.idle[p+2], slices.Max(next)-w.move)
		}
		tail := w.of(w.tail, p)
		w.idle[p] = w.idle[p+1]
		for h, v := range w.of(w.value, p) {
			if next == nil {
				tail[h] = v
			} else {
				tail[h] = v + max(moved, next[h])
			}
			w.idle[p] = max(w.idle[p], tail[h])
		}
	}
	return w.idle[0]
}

func (w *ways[T]) of(list []T, period int) []T { return list[period*w.holes : (period+1)*w.holes] }

// from returns what the best way is worth that goes on from one hole, or none, to
// another, or none, in a period.
func (w *ways[T]) from(period int, was, is int8) T {
	if is == none {
		return w.idle[period+1]
	}
	v := w.tail[period*w.holes+int(is)]
	if was != none && was != is {
		v -= w.move
	}
	return v
}

// walk follows the tails along a best way; of equal ones, the first holes.
func (w *ways[T]) walk(out way) way {
	was := int8(none)
	for p := range w.periods {
		next := int8(none)
		for h := range w.holes {
			if w.from(p, was, int8(h)) > w.from(p, was, next) {
				next = int8(h)
			}
		}
		out[p], was = next, next
	}
	return out
}

// within hands every way to see whose worth is at least so much; the way is see's
// to read, not to keep. It ends when see returns false.
func (w *ways[T]) within(least T, see func(at way, worth T) bool) bool {
	return w.extend(make(way, w.periods), 0, 0, least, see)
}

func (w *ways[T]) extend(at way, period int, sum, least T, see func(at way, worth T) bool) bool {
	if period == w.periods {
		return see(at, sum)
	}
	was := int8(none)
	if period > 0 {
		was = at[period-1]
	}
	for h := int8(none); int(h) < w.holes; h++ {
		if sum+w.from(period, was, h) < least {
			continue
		}
		step := T(0)
		if h != none {
			if step = w.value[period*w.holes+int(h)]; was != none && was != h {
				step -= w.move
			}
		}
		at[period] = h
		if !w.extend(at, period+1, sum+step, least, see) {
			return false
		}
	}
	return true
}
