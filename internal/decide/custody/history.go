package custody

import (
	"cmp"
	"slices"
	"time"
)

// Entry is an event in its place of the history.
type Entry struct {
	Event
	When time.Time // when it counts: its own time, or that of the event it replaces
}

// History is the one true order of an arena's events: by time, then by id, each once,
// corrected ones replaced. It depends on which events there are, not on how they came.
type History []Entry

// HistoryOf puts events in order. Of two corrections of one event the later counts;
// a correction whose event has not come yet stands at its own time until it does.
func HistoryOf(events []Event) History {
	byID := make(map[ID]Event, len(events))
	var corrects []Event
	for _, e := range events {
		if _, twice := byID[e.ID]; twice {
			continue
		}
		byID[e.ID] = e
		if e.Corrects != "" {
			corrects = append(corrects, e)
		}
	}
	last := map[ID]Event{} // the correction that counts, by the event that it names
	for _, c := range corrects {
		if before, is := last[c.Corrects]; !is || earlier(before, c) {
			last[c.Corrects] = c
		}
	}
	out := make(History, 0, len(byID))
	for _, e := range byID {
		if _, known := byID[e.Corrects]; known && e.Corrects != "" {
			continue // it stands in another's place
		}
		now, when := e, e.At()
		for range corrects { // a correction may be corrected; a ring of them ends here
			next, is := last[now.ID]
			if !is {
				break
			}
			now = next
		}
		if _, none := now.Fact.(Withdrawn); !none {
			out = append(out, Entry{now, when})
		}
	}
	slices.SortFunc(out, inOrder)
	return out
}

func inOrder(a, b Entry) int { return cmp.Or(a.When.Compare(b.When), cmp.Compare(a.ID, b.ID)) }

func earlier(a, b Event) bool {
	return cmp.Or(a.At().Compare(b.At()), cmp.Compare(a.ID, b.ID)) < 0
}

// Facts returns the entries that say a fact of one kind, with the fact.
func Facts[T Fact](h History, yield func(Entry, T)) {
	for _, e := range h {
		if f, is := e.Fact.(T); is {
			yield(e, f)
		}
	}
}
